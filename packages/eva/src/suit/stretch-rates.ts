import { Fault } from '@handrail/quantity/fault';
import type { SourcedValue } from '@handrail/quantity/sourced-value';
import { gasExchange } from './gas-exchange.ts';
import type { SuitSpecification } from './suit-specification.ts';
import { providing, type SupplyCase, using } from './supply-case.ts';
import type { SuitPerson, WorkStretch } from './work-stretch.ts';

/** Constant rates of one stretch, with the parts that add up to them. */
export interface StretchRates {
  readonly oxygenKgPerS: { readonly body: number; readonly leakage: number };
  readonly carbonDioxideKgPerS: number;
  readonly batteryW: number;
  /** Heat that arises in the suit, by where it comes from. */
  readonly heatPartsW: {
    readonly body: number;
    readonly loads: number;
    readonly absorber: number;
    readonly surroundings: number;
  };
  /** Their sum; negative where the suit loses more than it makes. */
  readonly heatW: number;
}

/**
 * What one stretch takes per second in one case. The respiratory quotient pulls both ways (a low one needs more oxygen, a high one
 * gives more CO2), so each supply takes its own worst end.
 */
export function stretchRates(
  suit: SuitSpecification,
  person: SuitPerson,
  stretch: WorkStretch,
  supplyCase: SupplyCase,
): StretchRates {
  const c = suit.constants;
  const uses = (value: SourcedValue): number => using(value, supplyCase);
  const provides = (value: SourcedValue): number => providing(value, supplyCase);

  const effort = Object.hasOwn(suit.effortsW, stretch.effort) ? suit.effortsW[stretch.effort] : undefined;
  if (effort === undefined) throw unknownName('effort', stretch.effort, suit.id, Object.keys(suit.effortsW));
  const metabolicW = uses(effort) * uses(person.effortFactor);

  let loadW = 0;
  const asked = new Set(stretch.loads ?? []);
  for (const name of asked) {
    if (!Object.hasOwn(suit.loads, name)) throw unknownName('load', name, suit.id, Object.keys(suit.loads));
  }
  for (const [name, load] of Object.entries(suit.loads)) {
    if (load.always || asked.has(name)) loadW += uses(load.powerW);
  }

  const oxygen = gasExchange(metabolicW, provides(c.respiratoryQuotient), suit.energyEquivalent).oxygenKgPerS;
  const carbonDioxide = gasExchange(metabolicW, uses(c.respiratoryQuotient), suit.energyEquivalent).carbonDioxideKgPerS;
  const heatPartsW = {
    body: metabolicW,
    loads: loadW * uses(c.loadHeatShare),
    absorber: carbonDioxide * uses(c.absorberHeatJPerKg),
    surroundings: uses(c.heatFromSurroundingsW),
  };
  return {
    oxygenKgPerS: { body: oxygen, leakage: uses(c.oxygenLeakageKgPerS) },
    carbonDioxideKgPerS: carbonDioxide,
    batteryW: loadW,
    heatPartsW,
    heatW: heatPartsW.body + heatPartsW.loads + heatPartsW.absorber + heatPartsW.surroundings,
  };
}

function unknownName(what: 'effort' | 'load', name: string, suit: string, known: readonly string[]): Fault {
  return new Fault(`suit/unknown-${what}`, `suit ${suit} has no ${what} called ${name}`, {
    values: { suit, name, known },
    advice: `use one of ${known.join(', ')}`,
  });
}
