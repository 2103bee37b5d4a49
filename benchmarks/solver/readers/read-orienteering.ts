import { ModelBuilder } from '@handrail/solver/model/build-model';
import { FORBIDDEN, type LinearTerm, type Model } from '@handrail/solver/model/model';

/**
 * Orienteering with time windows, one route: from the depot through some of the places, each within its window, back to
 * the depot before it closes; maximise the sum of the scores. Waiting is free.
 *
 * Text form: a line that says kind and count, a line of no use here, then a line a place: number, x, y, service time, score,
 * three or more fields on visit frequency, and opening and closing time as the last two (the depot has the closing time alone).
 * The start of the service has to lie in the window.
 *
 * Distances are Euclidean, truncated to one decimal for the c, r and rc instances and to two for the pr instances, as the published
 * optima have it [RIGHINI-SALANI-2009]; times are multiplied by 10 or 100 to be integers. The first objective is the negated score.
 */
export function readOrienteering(text: string, name: string): Model {
  const scale = /^pr/i.test(name) ? 100 : 10;
  const rows = text
    .split(/\r?\n/)
    .map((line) => line.trim().split(/\s+/).map(Number))
    .filter((row) => row.length >= 8);
  const places = rows.map((row) => ({
    x: row[1] as number,
    y: row[2] as number,
    service: Math.round((row[3] as number) * scale),
    score: row[4] as number,
    opens: Math.round((row.at(-2) as number) * scale),
    closes: Math.round((row.at(-1) as number) * scale),
  }));
  type Place = (typeof places)[number];
  const [depot, ...others] = places as [Place, ...Place[]];
  const travel = (a: Place, b: Place) => Math.floor(Math.hypot(a.x - b.x, a.y - b.y) * scale + 1e-9);
  const visits = others.filter((place) => {
    const starts = Math.max(place.opens, travel(depot, place));
    return place.score > 0 && starts <= place.closes && starts + place.service + travel(place, depot) <= depot.closes;
  });
  const builder = new ModelBuilder(name, depot.closes);
  const out = builder.interval('out', 0, { endMax: 0 });
  const home = builder.interval('home', 0);
  const terms: LinearTerm[] = [];
  const members = [
    { interval: out, startType: 0, endType: 0 },
    { interval: home, startType: 0, endType: 0 },
  ];
  visits.forEach((place, i) => {
    const presence = builder.boolean(`visit ${others.indexOf(place) + 1}`);
    const interval = builder.interval(`at ${others.indexOf(place) + 1}`, place.service, {
      presence,
      startMin: Math.max(place.opens, travel(depot, place)),
      endMax: Math.min(place.closes + place.service, depot.closes - travel(place, depot)),
    });
    members.push({ interval, startType: i + 1, endType: i + 1 });
    terms.push({ coefficient: -place.score, variable: presence.variable });
  });
  const all = [depot, ...visits];
  // A step that comes too late for the window of its goal can never be made.
  const step = (a: Place, b: Place) => {
    const time = a === b ? 0 : travel(a, b);
    const leaves = a === depot ? 0 : Math.max(a.opens, travel(depot, a)) + a.service;
    return a !== b && b !== depot && leaves + time > b.closes ? FORBIDDEN : time;
  };
  builder.post({
    kind: 'sequence',
    members,
    types: all.length,
    transitions: all.flatMap((a) => all.map((b) => step(a, b))),
    first: out,
    last: home,
    transitionTotal: null,
    tag: null,
  });
  builder.minimise('negated score', { terms, constant: 0 });
  return builder.build();
}
