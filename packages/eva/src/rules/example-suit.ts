/** A suit for rules' examples: every figure invented and exact. Changes replace the figure of a constant. */
const CONSTANTS: Readonly<Record<string, string>> = {
  'oxygen-volume': '"8 L"',
  'oxygen-start-pressure': '"6 MPa"',
  'oxygen-reserve-pressure': '"0.4 MPa"',
  'oxygen-temperature': '"20 °C"',
  'oxygen-leakage': '"2 g/h"',
  'oxygen-purge': '"0 kg"',
  'respiratory-quotient': '0.85',
  'carbon-dioxide-capacity': '"0.8 kg"',
  'carbon-dioxide-reserve': '"0.05 kg"',
  'carbon-dioxide-breakthrough-share': '0.9',
  'carbon-dioxide-warning': '"2 kPa"',
  'absorber-heat': '"2 MJ/kg"',
  'water-start': '"5 kg"',
  'water-reserve': '"0.3 kg"',
  'water-latent-heat': '"2500 kJ/kg"',
  'heat-from-surroundings': '"0 W"',
  'load-heat-share': '1',
  'heat-removal-most': '"600 W"',
  'heat-storage-limit': '"4.7 kJ/kg"',
  'battery-start': '"600 Wh"',
  'battery-usable-share': '0.9',
  'battery-reserve': '"30 Wh"',
};

export function exampleSuit(id: string, changes: Readonly<Record<string, string>> = {}): string {
  const constants = Object.entries({ ...CONSTANTS, ...changes }).map(
    ([word, figure]) => `    constant ${word} ${figure} exact=#true source="invented"\n`,
  );
  return `suit ${id} gas-law=real energy=lusk-1924 before-egress="10 min" {
${constants.join('')}    effort light "200 W" exact=#true source="invented"
    effort hard "400 W" low="350 W" high="450 W" source="invented"
    load fan "40 W" exact=#true when=always source="invented"
    inspired-curve measured=#true source="invented" { point "150 W" mean="0.8 kPa" deviation="0.1 kPa"; point "600 W" mean="1.6 kPa" deviation="0.2 kPa" }
    secondary-oxygen fitted=#false
    effort-use low=light moderate=hard high=hard moving=hard passing=light helping=light unknown=hard idle=light beyond=hard planning=hard
}
`;
}

/** A third person out, in a suit of their own, and what they do. */
export function inSuit(suit: string): string {
  return `${suit}person EV3 role=outside suit=worn work-factor=1.0 body-mass="75 kg" suit-limit="7 h" anchor=porch-anchor tether="26 m" carries=4
task look rank=1 eva=day { stint see who=EV3 at=bay { inspect bay } }
`;
}

/** Six hours out, mostly at rest: 200 W, near 0.32 kg of oxygen. */
export const SIX_HOURS_OUT = `eva day
EV3 0:00-0:05 out
EV3 0:05-0:09 porch > bay
EV3 0:09-0:20 look/see
EV3 5:40-5:44 bay > porch
EV3 5:44-5:50 in
hatch 5:50-6:00`;
