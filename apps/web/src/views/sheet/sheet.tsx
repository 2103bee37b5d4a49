/** The sheet of the selected stint: people, settings, kit, needs and leaves, evidence for its minutes, why here, ways home, findings. */
import { evidence, roleWords } from '@handrail/eva/brief/parts/sheet';
import { stepSentence } from '@handrail/eva/brief/step-sentence';
import type { Campaign, Stint } from '@handrail/eva/campaign/campaign';
import { formatSpan } from '@handrail/eva/campaign/span';
import type { StintEffects } from '@handrail/eva/hardware/effects';
import { stintsByKey } from '@handrail/eva/timeline/person-course';
import { formatDuration, formatPet, formatUtcClock } from '@handrail/quantity/time';
import { look } from '../../session/session-store.ts';
import { ActionButton } from '../shell/action-button.tsx';
import { useDerived, useDocument, useSession } from '../shell/use-stores.ts';
import { MinutesField } from './minutes-field.tsx';
import styles from './sheet.module.css';

export function Sheet() {
  const selection = useSession((state) => state.selection);
  const opening = useDerived((state) => state.opening.value);
  const timeline = useDocument((state) => state.copy.timeline);
  const judged = useDerived((state) => state.judged.value);
  const campaign = opening?.campaign ?? null;
  const stint = selection?.what === 'stint' && campaign !== null ? stintsByKey(campaign).get(selection.id) : undefined;
  if (campaign === null || stint === undefined) {
    return (
      <aside className={styles.sheet} aria-label="Sheet" tabIndex={0}>
        <h2>Nothing selected</h2>
        <p className={styles.empty}>
          Choose a stint on the chart, in the ranked list or with the arrow keys. Its people, settings, kit, minutes and
          findings stand here.
        </p>
      </aside>
    );
  }
  const eva = timeline?.evas.find(({ stints }) => stints.some((one) => one.stint === stint.key));
  const planned = eva?.stints.find((one) => one.stint === stint.key);
  const effects = opening?.hardware?.effects.get(stint.key);
  const here = eva === undefined ? undefined : judged?.evas.get(eva.eva);
  const why = here?.bindings.find(([key]) => key === stint.key)?.[1] ?? [];
  const findings = judged?.findings.filter(({ where }) => where.stint === stint.key) ?? [];
  const ways = (here?.chart.lanes ?? []).flatMap((lane) =>
    planned === undefined || !planned.assigned.includes(lane.person)
      ? []
      : lane.samples
          .filter(({ petS }) => petS >= planned.startS && petS <= planned.endS)
          .map((sample) => ({ ...sample, person: lane.person })),
  );
  const number = eva === undefined ? null : eva.stints.findIndex((one) => one.stint === stint.key) + 1;
  return (
    <aside className={styles.sheet} aria-label={`Sheet of ${stint.title}`} tabIndex={0} data-testid="sheet">
      <h2>
        {number === null ? '' : `${number} `}
        {stint.title}
      </h2>
      {planned === undefined || eva === undefined ? (
        <p className={styles.empty}>Not in the plan in hand.</p>
      ) : (
        <p className={styles.when}>
          PET {formatPet(planned.startS)} to {formatPet(planned.endS)} · UTC{' '}
          {formatUtcClock(eva.petZeroUtcMs + planned.startS * 1000)} · {formatDuration(planned.endS - planned.startS)}
        </p>
      )}
      {stint.caution === null ? null : (
        <p className={styles.caution}>
          <strong>Caution:</strong> {stint.caution}
        </p>
      )}
      <div className={styles.buttons}>
        <ActionButton id="earlier" words="1 min earlier" />
        <ActionButton id="later" words="1 min later" />
        <ActionButton id="give" words="Other person" />
        <ActionButton id="pin-start" words="Pin start" />
        <ActionButton id="pin-person" words="Pin person" />
        <ActionButton id="unpin" words="Unpin" />
      </div>
      <dl>
        <dt>Who, where</dt>
        <dd>
          {stint.roles.map((role, index) => (
            <div key={`${role.name}${role.fromStep}`}>
              {planned?.assigned[index] ?? role.candidates.join(' or ')} ({role.name}){' '}
              {roleWords(campaign, stint, index)}
            </div>
          ))}
        </dd>
        <dt>Steps</dt>
        <dd>
          <Steps campaign={campaign} stint={stint} />
        </dd>
        <dt>Minutes</dt>
        <dd>
          <MinutesField stint={stint} />
          {evidence(stint)}
        </dd>
        <dt>Tools, requests</dt>
        <dd>
          {pieces([
            ...(effects?.tools.map(({ tool }) => tool) ?? []),
            ...(effects?.controls.map(({ request }) => `under ${request}`) ?? []),
          ])}
        </dd>
        <dt>Needs</dt>
        <dd>{pieces(needWords(effects))}</dd>
        <dt>Leaves</dt>
        <dd>{pieces((effects?.leaves ?? []).map(({ variable, value }) => `${variable} ${value}`))}</dd>
        <dt>Why here</dt>
        <dd>
          {why.length === 0 ? (
            '–'
          ) : (
            <ul>
              {why.slice(0, 3).map(({ words }) => (
                <li key={words}>{words}</li>
              ))}
            </ul>
          )}
        </dd>
        <dt>Way home</dt>
        <dd>
          {ways.length === 0 ? (
            judged?.hasWaysHome === true ? (
              'nothing to close'
            ) : (
              'being worked out'
            )
          ) : (
            <ul>
              {ways.map((way) => (
                <li
                  key={`${way.person}${way.petS}${way.place}`}
                  className={way.unknown.length > 0 ? styles.unknown : way.committed ? styles.warning : undefined}
                >
                  {way.person} at {formatPet(way.petS)}: {way.committed ? 'no safe stop in reach' : way.words}
                  {way.unknown.length === 0 ? '' : `; unknown here: ${way.unknown.join(', ')}`}
                  {way.closing.length === 0 ? '' : `; leave it like this: ${way.closing.join(', ')}`}
                </li>
              ))}
            </ul>
          )}
        </dd>
        <dt>Stands at</dt>
        <dd>
          <button type="button" onClick={() => look({ view: 'text', line: stint.span.line })}>
            {formatSpan(stint.span)}
          </button>
        </dd>
        <dt>Findings</dt>
        <dd>
          {findings.length === 0
            ? 'none'
            : findings.map((finding) => (
                <p key={`${finding.rule}${finding.why}`} className={styles[finding.severity]}>
                  {finding.severity}: {finding.title}. {finding.why}
                </p>
              ))}
        </dd>
      </dl>
    </aside>
  );
}

function Steps({ campaign, stint }: { readonly campaign: Campaign; readonly stint: Stint }) {
  return (
    <ol>
      {stint.steps.map((step) => (
        <li key={`${step.span.line}:${step.span.column}:${step.verb}:${step.objects.join()}`}>
          {step.caution === null ? null : <strong>Caution: {step.caution}. </strong>}
          {stepSentence(campaign, step)}
          {step.by === 'lead' ? null : ` (${step.by})`}
        </li>
      ))}
    </ol>
  );
}

function needWords(effects: StintEffects | undefined): readonly string[] {
  return (effects?.needs ?? []).map(({ variable, allowed }) => `${variable} ${allowed.join(' or ')}`);
}

function pieces(words: readonly string[]) {
  const unique = [...new Set(words)];
  return unique.length === 0 ? (
    'none'
  ) : (
    <span className={styles.pieces}>
      {unique.map((word) => (
        <span key={word}>{word}</span>
      ))}
    </span>
  );
}
