import { DAY_MS, J2000_UTC_MS } from './earth.ts';
import { instantInRange } from './in-range.ts';

/**
 * Greenwich mean sidereal time, IAU 1982, rad in [0, 2π).
 * Earth rotation is set by UT1; UTC stays within 0.9 s of it, so without `dut1S` a ground place is at most 0.004° (0.42 km
 * at the equator) off, which no window here can notice.
 * @param utcMs instant, UTC ms, 1957 to 2057
 * @param dut1S UT1 − UTC, s, 0 when not known
 * @throws Fault `sky/out-of-range`
 * @source [MEEUS] Astronomical Algorithms, 2nd ed., chapter 12; [VALLADO] eq. 3-47
 * @checked tests/reference/sky/sidereal-time.test.ts
 */
export function gmstRad(utcMs: number, dut1S = 0): number {
  instantInRange('the instant', utcMs);
  const days = (utcMs - J2000_UTC_MS + dut1S * 1000) / DAY_MS;
  const t = days / 36525;
  // Whole turns are taken off the large linear term before it meets the small ones, to keep the last digits.
  const turns = 0.779_057_273_264 + 0.002_737_909_350_795 * days + (days % 1);
  const seconds = (0.093_104 - 6.2e-6 * t) * t * t;
  const angle = 2 * Math.PI * ((turns + seconds / 86_400) % 1);
  return angle < 0 ? angle + 2 * Math.PI : angle;
}
