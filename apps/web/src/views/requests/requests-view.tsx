/** What is asked of the vehicle: who grants it, how far it is, when it is wanted, and when it must be asked. */
import type { Request } from '@handrail/eva/campaign/campaign';
import { pathOfSpan, setProperty } from '@handrail/eva/campaign/edit/edit-document';
import { ProblemList } from '@handrail/eva/campaign/problem/problem';
import { parseFile } from '@handrail/eva/campaign/text/parse-file';
import { formatDuration, formatPet, formatUtcClock } from '@handrail/quantity/time';
import { change, documentStore } from '../../document/document-store.ts';
import { FILE_NAME } from '../../document/working-copy.ts';
import { mayWrite } from '../../server-link/server-store.ts';
import { look, tell } from '../../session/session-store.ts';
import { useDerived, useDocument, useServer, useSession } from '../shell/use-stores.ts';
import styles from './requests.module.css';

const STATUS: readonly Request['status'][] = ['draft', 'asked', 'agreed', 'refused'];

export default function RequestsView() {
  const campaign = useDerived((state) => state.opening.value?.campaign ?? null);
  const timeline = useDocument((state) => state.copy.timeline);
  const selection = useSession((state) => state.selection);
  const isAllowed = useServer(mayWrite);
  if (campaign === null) return <p className={styles.empty}>The text has errors: requests are shown when it reads.</p>;
  const owners = [...new Set(campaign.requests.map(({ owner }) => owner))].sort();
  return (
    <section className={styles.view} aria-label="Requests" tabIndex={0}>
      <h2>Requests</h2>
      {campaign.requests.length === 0 ? (
        <p className={styles.empty}>
          Nothing is asked of the vehicle yet. A request says what must be off, parked or held while somebody works:
          item, owner, inhibits, times. It is a line of the text:{' '}
          <code>request bus-off "Pump power off" owner=power …</code>
        </p>
      ) : null}
      {campaign.requests.length === 0 ? null : (
        <table>
          <caption className="out-of-sight">Requests by owner</caption>
          <thead>
            <tr>
              <th scope="col">What</th>
              <th scope="col">Status</th>
              <th scope="col">Inhibits</th>
              <th scope="col">Ask by</th>
              <th scope="col">In force</th>
              <th scope="col">Held, at most</th>
              <th scope="col">Set, verify, clear</th>
              <th scope="col">Line</th>
            </tr>
          </thead>
          {owners.map((owner) => (
            <tbody key={owner}>
              <tr>
                <th scope="rowgroup" colSpan={8} className={styles.owner}>
                  {owner}
                </th>
              </tr>
              {campaign.requests
                .filter((request) => request.owner === owner)
                .map((request) => {
                  const holds = (timeline?.evas ?? []).flatMap((eva) =>
                    eva.holds.filter((hold) => hold.request === request.id).map((hold) => ({ ...hold, eva })),
                  );
                  return (
                    <tr
                      key={request.id}
                      aria-current={selection?.what === 'request' && selection.id === request.id ? 'true' : undefined}
                    >
                      <th scope="row">{request.title}</th>
                      <td>
                        <select
                          value={request.status}
                          disabled={!isAllowed}
                          data-status={request.status}
                          aria-label={`Status of ${request.title}`}
                          onChange={(event) => setStatus(request, event.target.value)}
                        >
                          {STATUS.map((status) => (
                            <option key={status}>{status}</option>
                          ))}
                        </select>
                      </td>
                      <td>{request.inhibits}</td>
                      <td>
                        {holds.length === 0
                          ? '–'
                          : holds.map((hold) => (
                              <div key={`${hold.eva.eva}${hold.askS}`}>
                                {hold.eva.eva} PET {formatPet(hold.askS)} (
                                {formatUtcClock(hold.eva.petZeroUtcMs + hold.askS * 1000)} UTC)
                              </div>
                            ))}
                      </td>
                      <td>
                        {holds.length === 0
                          ? 'not in the plan in hand'
                          : holds.map((hold) => (
                              <button
                                key={`${hold.eva.eva}${hold.askS}`}
                                type="button"
                                onClick={() => look({ view: 'plan', evaId: hold.eva.eva, minuteS: hold.verifiedS })}
                              >
                                {hold.eva.eva} {formatPet(hold.verifiedS)} to {formatPet(hold.clearedS)}
                              </button>
                            ))}
                      </td>
                      <td>
                        {holds.map((hold) => (
                          <span key={`${hold.eva.eva}${hold.askS}`}>
                            {formatDuration(hold.clearedS - hold.verifiedS)}
                            {', '}
                          </span>
                        ))}
                        {request.longestHoldS === null ? 'no limit stated' : formatDuration(request.longestHoldS)}
                      </td>
                      <td>
                        {[request.setLeadS, request.verifyS, request.clearS].map((s) => formatDuration(s)).join(', ')}
                      </td>
                      <td>
                        <button type="button" onClick={() => look({ view: 'text', line: request.span.line })}>
                          {request.span.line}
                        </button>
                      </td>
                    </tr>
                  );
                })}
            </tbody>
          ))}
        </table>
      )}
    </section>
  );
}

function setStatus(request: Request, status: string): void {
  const file = parseFile(FILE_NAME, documentStore.getState().copy.text, new ProblemList());
  const path = file.document === null ? null : pathOfSpan(file, request.span);
  if (path === null) {
    tell('The text has a syntax error: mend it first');
    return;
  }
  change('Status of a request', { edits: [setProperty(file, path, 'status', status)] });
  tell(`${request.title}: ${status}`);
}
