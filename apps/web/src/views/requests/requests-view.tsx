/** What is asked of the vehicle: who grants it, how far it is, when it is wanted, and when it must be asked. */
import type { Request } from '@handrail/eva/campaign/campaign';
import { pathOfSpan, setProperty } from '@handrail/eva/campaign/edit/edit-document';
import { formatDuration, formatPet, formatUtcClock } from '@handrail/quantity/time';
import { change } from '../../document/document-store.ts';
import { editableText } from '../../document/editable-text.ts';
import { mayWrite } from '../../server-link/server-store.ts';
import { look, tell } from '../../session/session-store.ts';
import { useDerived, useDocument, useServer, useSession } from '../shell/use-stores.ts';
import styles from './requests.module.css';
import { HeadRow } from '../shell/head-row.tsx';

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
          <HeadRow
            of={['What', 'Status', 'Inhibits', 'Ask by', 'In force', 'Held, at most', 'Set, verify, clear', 'Line']}
          />
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
  const file = editableText();
  const path = file === null ? null : pathOfSpan(file, request.span);
  if (file === null || path === null) return;
  change('Status of a request', { edits: [setProperty(file, path, 'status', status)] });
  tell(`${request.title}: ${status}`);
}
