/** Earth as an ellipsoid and a gravity field. @source [WGS84] NIMA TR8350.2, 3rd ed.: defining parameters; J2 from its C2,0. */
export const EARTH_EQUATORIAL_RADIUS_KM = 6378.137;
export const EARTH_FLATTENING = 1 / 298.257223563;
export const EARTH_MU_KM3_S2 = 398_600.4418;
export const EARTH_J2 = 1.082_626_68e-3;
/** Nominal solar radius. @source [IAU2015-B3] IAU 2015 Resolution B3, km. */
export const SUN_RADIUS_KM = 695_700;
/** @source [IAU2012-B2] IAU 2012 Resolution B2, exact, km. */
export const ASTRONOMICAL_UNIT_KM = 149_597_870.7;
/** Radius of a geostationary orbit: (μ / ω²)^⅓ with ω of the sidereal day, km. */
export const GEOSTATIONARY_RADIUS_KM = 42_164.172;
export const DAY_MS = 86_400_000;
/** 2000-01-01T12:00:00 as UTC milliseconds. */
export const J2000_UTC_MS = 946_728_000_000;
