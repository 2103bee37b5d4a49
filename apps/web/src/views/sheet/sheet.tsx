/** The sheet of the selected stint: people, settings, kit, needs and leaves, evidence for its minutes, why here, ways home, findings. */
import { evidence, roleWords } from '@handrail/eva/brief/parts/sheet';
import { stepSentence, titleOf } from '@handrail/eva/brief/step-sentence';
import type { Campaign, Stint } from '@handrail/eva/campaign/campaign';
import { stintsByKey } from '@handrail/eva/timeline/person-course';
import { formatDuration, formatPet, formatUtcClock } from '@handrail/quantity/time';
import { look } from '../../session/session-store.ts';
import { safeMend } from '../findings/safe-mends.ts';
import { ActionButton } from '../shell/action-button.tsx';
import { useDerived, useDocument, useSession } from '../shell/use-stores.ts';
import { Why } from '../why/why.tsx';
import { EditFields } from './edit-fields.tsx';
import { MinutesField } from './minutes-field.tsx';
import styles from './sheet.module.css';
import { SplitButton } from './split-button.tsx';
import { leaveWords, needWords, type StateWords } from './state-words.ts';
import { TaskFields } from './task-fields.tsx';
import { WayFields } from './way-fields.tsx';
import { WayHomeList } from './way-home-list.tsx';

export function Sheet() {
  const selection = useSession((state) => state.selection);
  const campaign = useDerived((state) => state.opening.value?.campaign ?? null);
  const stint = selection?.what === 'stint' && campaign !== null ? stintsByKey(campaign).get(selection.id) : undefined;
  if (campaign === null || stint === undefined) {
    return (
      <aside className={styles.sheet} aria-label="Sheet" tabIndex={0}>
        <h2>Nothing selected</h2>
        <p className={styles.empty}>
          Choose a stint on the chart, in the ranked list, or with <kbd>N</kbd> and the arrow keys. Its people,
          settings, kit, minutes, ways home and findings stand here.
        </p>
      </aside>
    );
  }
  return <StintSheet campaign={campaign} stint={stint} />;
}

function StintSheet({ campaign, stint }: { readonly campaign: Campaign; readonly stint: Stint }) {
  const hardware = useDerived((state) => state.opening.value?.hardware ?? null);
  const judged = useDerived((state) => state.judged.value);
  const timeline = useDocument((state) => state.copy.timeline);
  const eva = timeline?.evas.find(({ stints }) => stints.some((one) => one.stint === stint.key));
  const index = eva?.stints.findIndex((one) => one.stint === stint.key) ?? -1;
  const planned = eva?.stints[index];
  const effects = hardware?.effects.get(stint.key);
  const here = eva === undefined ? undefined : judged?.evas.get(eva.eva);
  const why = here?.bindings.find(([key]) => key === stint.key)?.[1] ?? [];
  const assigned = planned?.assigned ?? [];
  const chain = why.map(({ words, kind, slackS }) =>
    kind === 'free' && slackS > 0 ? `${words} (free by ${formatDuration(slackS)})` : words,
  );
  return (
    <aside className={styles.sheet} aria-label={`Sheet of ${stint.title}`} tabIndex={0} data-testid="sheet">
      <h2>
        {index < 0 ? null : <span className={styles.number}>{index + 1}</span>}
        {stint.title}
      </h2>
      {planned === undefined || eva === undefined ? (
        <p className={styles.empty}>Not in the plan in hand.</p>
      ) : (
        <p className={styles.when}>
          PET{' '}
          <Why
            of={`start of "${stint.title}"`}
            sum={chain.length === 0 ? ['nothing comes before it'] : chain}
            line={stint.span.line}
          >
            {formatPet(planned.startS)}
          </Why>{' '}
          to {formatPet(planned.endS)} · {formatUtcClock(eva.petZeroUtcMs + planned.startS * 1000)} UTC ·{' '}
          <Why
            of={`minutes of "${stint.title}"`}
            sum={[evidence(stint), ...stepSums(stint)]}
            line={stint.duration.span?.line ?? stint.span.line}
          >
            {formatDuration(planned.endS - planned.startS)}
          </Why>
        </p>
      )}
      {stint.caution === null ? null : (
        <p className={styles.caution}>
          <strong>Caution:</strong> {stint.caution}
        </p>
      )}
      <div className={styles.buttons}>
        <ActionButton id="earlier" words="1 min earlier" isPlain />
        <ActionButton id="later" words="1 min later" isPlain />
        <ActionButton id="give" words="Other person" isPlain />
        <ActionButton id="pin-start" words="Pin start" isPlain />
        <ActionButton id="pin-person" words="Pin person" isPlain />
        <ActionButton id="pin-order" words="Pin order" isPlain />
        <ActionButton id="unpin" words="Unpin" isPlain />
      </div>
      <Findings stint={stint} />
      <dl>
        <dt>Who, where</dt>
        <dd>
          {stint.roles.map((role, at) => (
            <div key={`${role.name}${role.fromStep}`}>
              <b>{planned?.assigned[at] ?? role.candidates.join(' or ')}</b> ({role.name}){' '}
              {roleWords(campaign, stint, at)}
            </div>
          ))}
          <EditFields campaign={campaign} stint={stint} />
          <TaskFields campaign={campaign} stint={stint} />
          {planned === undefined || eva === undefined ? null : (
            <WayFields campaign={campaign} stint={stint} eva={eva} planned={planned} />
          )}
        </dd>
        <dt>Steps</dt>
        <dd>
          <Steps campaign={campaign} stint={stint} />
        </dd>
        <dt>Minutes</dt>
        <dd>
          <MinutesField stint={stint} />
          <p className={styles.soft}>{evidence(stint)}</p>
        </dd>
        <dt>Way home</dt>
        <dd>
          {planned === undefined || here === undefined ? (
            '–'
          ) : (
            <WayHomeList chart={here.chart} planned={planned} isKnown={judged?.hasWaysHome === true} />
          )}
        </dd>
        <dt>Why here</dt>
        <dd>
          {chain.length === 0 ? (
            '–'
          ) : (
            <ol className={styles.chain}>
              {chain.slice(0, 4).map((words) => (
                <li key={words}>{words}</li>
              ))}
            </ol>
          )}
        </dd>
        <dt>Kit, requests</dt>
        <dd>
          <Pieces
            all={[
              ...(effects?.tools.map(({ tool }) => ({ words: titleOf(campaign, tool), why: 'a tool of its verbs' })) ??
                []),
              ...(effects?.controls.map(({ request, origin }) => ({
                words: `under ${campaign.requests.find(({ id }) => id === request)?.title ?? request}`,
                why: origin.words,
              })) ?? []),
            ]}
          />
        </dd>
        <dt>Needs</dt>
        <dd>
          <Pieces all={effects === undefined ? [] : needWords(campaign, effects, assigned)} />
        </dd>
        <dt>Leaves</dt>
        <dd>
          <Pieces all={effects === undefined ? [] : leaveWords(campaign, effects, assigned)} />
        </dd>
        <dt>Stands at</dt>
        <dd>
          <button type="button" onClick={() => look({ view: 'text', line: stint.span.line })}>
            line {stint.span.line} of the text
          </button>
          {stint.template === null ? null : ` (from the template ${stint.template})`}
        </dd>
      </dl>
    </aside>
  );
}

function stepSums(stint: Stint): readonly string[] {
  if (stint.duration.basis !== 'steps') return [];
  return stint.steps.map(
    ({ verb, objects }, index) => `${verb} ${objects.join(' ')}: ${formatDuration(stint.duration.stepsS[index] ?? 0)}`,
  );
}

function Findings({ stint }: { readonly stint: Stint }) {
  const all = useDerived((state) => state.judged.value?.findings);
  const findings = all?.filter(({ where }) => where.stint === stint.key) ?? [];
  if (findings.length === 0) return null;
  return (
    <ul className={styles.findings} aria-label="Findings on this stint">
      {findings.map((finding, index) => {
        const mend = finding.waiver === null ? safeMend(finding) : null;
        return (
          <li key={`${finding.rule}${index}`} className={styles[finding.severity]}>
            <b>
              {finding.severity}: {finding.title}
            </b>
            {finding.waiver === null ? null : ` (waived: ${finding.waiver})`}
            <div>{finding.why}</div>
            {finding.mend === null ? null : <div>Mend: {finding.mend}</div>}
            <button type="button" onClick={() => look({ view: 'help', page: finding.rule })}>
              What this is
            </button>
            {mend === null ? null : (
              <button type="button" onClick={mend.run}>
                {mend.title}
              </button>
            )}
          </li>
        );
      })}
    </ul>
  );
}

function Steps({ campaign, stint }: { readonly campaign: Campaign; readonly stint: Stint }) {
  return (
    <ol className={styles.steps}>
      {stint.steps.map((step, index) => (
        <li key={`${step.span.line}:${step.span.column}:${step.verb}:${step.objects.join()}`}>
          {step.caution === null ? null : <strong>Caution: {step.caution}. </strong>}
          {stepSentence(campaign, step)}
          {step.by === 'lead' ? null : ` (${step.by})`}
          {step.safeStop === null ? null : <i> {step.safeStop ? 'safe stop' : 'no safe stop'}</i>}
          {index + 1 < stint.steps.length && stint.template === null && step.safeStop !== false ? (
            <>
              {' '}
              <SplitButton campaign={campaign} stint={stint} step={index + 1} />
            </>
          ) : null}
        </li>
      ))}
    </ol>
  );
}

function Pieces({ all }: { readonly all: readonly StateWords[] }) {
  const unique = [...new Map(all.map((one) => [one.words, one] as const)).values()];
  if (unique.length === 0) return 'none';
  return (
    <ul className={styles.pieces}>
      {unique.map(({ words, why }) => (
        <li key={words} title={why}>
          {words}
        </li>
      ))}
    </ul>
  );
}
