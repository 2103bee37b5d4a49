/**
 * Time scales of a plan. PET (phase elapsed time) is the EVA's own clock: integer seconds from PET 0, which is the planned
 * start of egress. UTC instants are milliseconds since 1970-01-01T00:00:00Z (leap seconds are not counted, as in ISO 8601 practice).
 */
declare const petBrand: unique symbol;
declare const utcBrand: unique symbol;
declare const secondsBrand: unique symbol;

/** Seconds since PET 0 of one EVA; negative before egress. */
export type Pet = number & { readonly [petBrand]: true };
/** Milliseconds since the Unix epoch, UTC. */
export type UtcInstant = number & { readonly [utcBrand]: true };
/** A length of time in seconds. */
export type Seconds = number & { readonly [secondsBrand]: true };

export const pet = (s: number): Pet => s as Pet;
export const utcInstant = (ms: number): UtcInstant => ms as UtcInstant;
export const seconds = (s: number): Seconds => s as Seconds;

/** "2:10" for 7800 s, "-0:05", and "2:10:30" where seconds are not whole minutes. */
export function formatPet(petS: number): string {
  const sign = petS < 0 ? '-' : '';
  const total = Math.round(Math.abs(petS));
  const hours = Math.floor(total / 3600);
  const minutes = Math.floor((total % 3600) / 60);
  const rest = total % 60;
  const tail = rest === 0 ? '' : `:${String(rest).padStart(2, '0')}`;
  return `${sign}${hours}:${String(minutes).padStart(2, '0')}${tail}`;
}

/** "14 min", "1 h 20 min", "40 s", "2 min 30 s". */
export function formatDuration(durationS: number): string {
  const sign = durationS < 0 ? '-' : '';
  const total = Math.round(Math.abs(durationS));
  const hours = Math.floor(total / 3600);
  const minutes = Math.floor((total % 3600) / 60);
  const rest = total % 60;
  const parts: string[] = [];
  if (hours > 0) parts.push(`${hours} h`);
  if (minutes > 0 || (hours === 0 && rest === 0)) parts.push(`${minutes} min`);
  if (rest > 0) parts.push(`${rest} s`);
  return sign + parts.join(' ');
}

/** "2031-09-14 11:40:00Z"; `toClock` gives "11:40". */
export function formatUtc(ms: number): string {
  return new Date(ms).toISOString().replace('T', ' ').replace('.000Z', 'Z');
}
export function formatUtcClock(ms: number): string {
  return new Date(ms).toISOString().slice(11, 16);
}

const ISO = /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}(:\d{2}(\.\d{1,3})?)?Z$/;

/** Reads an ISO 8601 UTC instant that ends in Z; null when it is not one, or when such a day does not exist. */
export function parseUtc(text: string): UtcInstant | null {
  if (!ISO.test(text)) return null;
  const ms = Date.parse(text);
  if (Number.isNaN(ms)) return null;
  return new Date(ms).toISOString().slice(0, 16) === text.slice(0, 16) ? utcInstant(ms) : null;
}

/** Reads "2:10" or "2:10:30" (also negative) as PET seconds; null when it is not of that form. */
export function parsePet(text: string): Pet | null {
  const match = /^(-?)(\d{1,2}):([0-5]\d)(?::([0-5]\d))?$/.exec(text);
  if (match === null) return null;
  const total = Number(match[2]) * 3600 + Number(match[3]) * 60 + Number(match[4] ?? 0);
  return pet(match[1] === '-' ? -total : total);
}
