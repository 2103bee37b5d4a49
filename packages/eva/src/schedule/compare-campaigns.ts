/**
 * What changed between two campaigns, thing by thing: what is new, what is gone, and which figures and words of what stayed are
 * others. Layout, comments and places in the text do not count; nor do evidence and derived figures that follow from others.
 */
import { formatDuration, formatPet, formatUtc } from '@handrail/quantity/time';
import type { Campaign } from '../campaign/campaign.ts';

export interface CampaignChange {
  /** "person", "task", "stint", "limit", … */
  readonly sort: string;
  readonly id: string;
  readonly kind: 'added' | 'removed' | 'changed';
  /** Path of the field and its two values in words; empty for added and removed. */
  readonly fields: readonly { readonly field: string; readonly from: string; readonly to: string }[];
}

interface Thing {
  readonly sort: string;
  readonly id: string;
  readonly value: unknown;
}

export function compareCampaigns(a: Campaign, b: Campaign): readonly CampaignChange[] {
  const [before, after] = [thingsOf(a), thingsOf(b)];
  const changes: CampaignChange[] = [];
  for (const [key, thing] of before) {
    const other = after.get(key);
    if (other === undefined) changes.push({ sort: thing.sort, id: thing.id, kind: 'removed', fields: [] });
    else {
      const fields = [...differences(thing.value, other.value, '')];
      if (fields.length > 0) changes.push({ sort: thing.sort, id: thing.id, kind: 'changed', fields });
    }
  }
  for (const [key, { sort, id }] of after) {
    if (!before.has(key)) changes.push({ sort, id, kind: 'added', fields: [] });
  }
  return changes;
}

function thingsOf(campaign: Campaign): ReadonlyMap<string, Thing> {
  const things = new Map<string, Thing>();
  const add = (sort: string, id: string, value: unknown) => things.set(`${sort} ${id}`, { sort, id, value });
  const addAll = (sort: string, list: readonly { readonly id: string }[]) => {
    for (const value of list) add(sort, value.id, value);
  };
  addAll('person', campaign.people);
  addAll('arm', campaign.arms);
  addAll('EVA', campaign.evas);
  addAll('objective', campaign.objectives);
  for (const task of campaign.tasks) {
    add('task', task.id, { ...task, stints: task.stints.map(({ id }) => id) });
    for (const stint of task.stints) add('stint', stint.key, stint);
  }
  addAll('hardware', campaign.hardware);
  addAll('place', campaign.vehicle.places);
  addAll('rail', campaign.vehicle.rails);
  addAll('load class', campaign.vehicle.loadClasses);
  addAll('request', campaign.requests);
  addAll('event', campaign.events);
  addAll('clock', campaign.clocks);
  addAll('window', campaign.windows);
  addAll('gate', campaign.gates);
  addAll('response', campaign.responses);
  for (const order of campaign.cutOrders) add('cut order', order.eva, order);
  add('limits', 'limits', campaign.limits);
  for (const pin of campaign.pins) add('pin', JSON.stringify(withoutSpans(pin)), null);
  for (const waiver of campaign.waivers) add('waiver', `${waiver.rule} of ${waiver.of}`, waiver);
  return things;
}

/** Fields that say where something stands in the text, or follow from others. */
const PASSED_OVER: ReadonlySet<string> = new Set(['span', 'stepsS', 'evidence', 'documentHash']);

function* differences(a: unknown, b: unknown, field: string): Generator<CampaignChange['fields'][number]> {
  if (isRecord(a) && isRecord(b)) {
    for (const key of new Set([...Object.keys(a), ...Object.keys(b)])) {
      if (!PASSED_OVER.has(key)) yield* differences(a[key], b[key], field === '' ? key : `${field}.${key}`);
    }
    return;
  }
  if (Array.isArray(a) && Array.isArray(b) && a.length === b.length) {
    for (const [index, value] of a.entries()) yield* differences(value, b[index], `${field}[${index + 1}]`);
    return;
  }
  const [from, to] = [words(a, field), words(b, field)];
  if (from !== to) yield { field, from, to };
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return value !== null && typeof value === 'object' && !Array.isArray(value);
}

function withoutSpans(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(withoutSpans);
  if (!isRecord(value)) return value;
  return Object.fromEntries(
    Object.entries(value).flatMap(([key, inner]) => (PASSED_OVER.has(key) ? [] : [[key, withoutSpans(inner)]])),
  );
}

/** A value as people write it: the unit is in the name of the field. */
function words(value: unknown, field: string): string {
  if (value === undefined || value === null) return 'not stated';
  if (typeof value === 'number') {
    if (/petS$/i.test(field)) return formatPet(value);
    if (field.endsWith('UtcMs')) return formatUtc(value);
    if (/S(\[\d+\])?$/.test(field)) return formatDuration(value);
    return String(value);
  }
  if (typeof value === 'string') return value;
  if (Array.isArray(value) && value.every((item) => typeof item === 'string')) return value.join(' ');
  return JSON.stringify(withoutSpans(value));
}
