import { ALL_ACTIONS } from '../../actions/all-actions.ts';
import { derivedStore } from '../../derived/derived-store.ts';
import { documentStore } from '../../document/document-store.ts';
import { look } from '../../session/session-store.ts';

export interface Findable {
  readonly id: string;
  readonly title: string;
  readonly sort: string;
  /** Further words by which it is found. */
  readonly more: string;
  readonly keys?: string | undefined;
  readonly run: () => void;
}

/** What can be done and gone to now. */
export function findables(): readonly Findable[] {
  const { campaign } = derivedStore.getState().opening.value ?? {};
  const findings = derivedStore.getState().judged.value?.findings ?? [];
  const { timeline } = documentStore.getState().copy;
  const actions = ALL_ACTIONS.filter((action) => action.id !== 'palette' && action.isPossible()).map((action) => ({
    id: `action ${action.id}`,
    title: action.title,
    sort: action.group,
    more: '',
    keys: action.keys?.[0],
    run: action.run,
  }));
  if (campaign == null) return actions;
  const planned = new Map(
    (timeline?.evas ?? []).flatMap((eva) => eva.stints.map((one) => [one.stint, { eva: eva.eva, ...one }] as const)),
  );
  const stints = campaign.tasks.flatMap((task) =>
    task.stints.map((stint) => {
      const at = planned.get(stint.key);
      return {
        id: `stint ${stint.key}`,
        title: stint.title,
        sort: at === undefined ? 'stint, not planned' : `stint, ${at.eva}`,
        more: `${stint.key} ${task.title}`,
        run: () =>
          look({
            view: 'plan',
            selection: { what: 'stint', id: stint.key },
            ...(at === undefined ? {} : { evaId: at.eva, minuteS: at.startS }),
          }),
      };
    }),
  );
  const lines = [
    ...campaign.vehicle.places.map((one) => ({ ...one, sort: 'place' })),
    ...campaign.people.map((one) => ({ ...one, title: one.id, sort: 'person' })),
    ...campaign.hardware.map((one) => ({ ...one, sort: one.kind })),
  ].map(({ id, title, sort, span }) => ({
    id: `${sort} ${id}`,
    title,
    sort: `${sort}, line ${span.line}`,
    more: id,
    run: () => look({ view: 'text', line: span.line }),
  }));
  const requests = campaign.requests.map(({ id, title, owner, status }) => ({
    id: `request ${id}`,
    title,
    sort: `request, ${status}`,
    more: `${id} ${owner}`,
    run: () => look({ view: 'requests', selection: { what: 'request', id } }),
  }));
  const found = findings.map((finding, index) => ({
    id: `finding ${index}`,
    title: finding.title,
    sort: finding.severity,
    more: `${finding.rule} ${finding.where.stint ?? ''}`,
    run: () =>
      finding.where.stint === null
        ? look({ view: 'findings' })
        : look({
            view: 'plan',
            selection: { what: 'stint', id: finding.where.stint },
            ...(finding.where.eva === null ? {} : { evaId: finding.where.eva }),
            ...(finding.where.petS === null ? {} : { minuteS: finding.where.petS }),
          }),
  }));
  return [...actions, ...stints, ...requests, ...lines, ...found];
}
