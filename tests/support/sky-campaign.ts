/** A small campaign with an invented orbit, for tests of what is computed from it. */
import type { Campaign } from '@handrail/eva/campaign/campaign';
import { readCampaign } from '@handrail/eva/campaign/read-campaign';
import { standardLibrary } from '@handrail/eva/kinds/kinds-library';
import { templates } from '@handrail/eva/kinds/templates.generated';

export const CIRCLE =
  'orbit name="Test station" { kepler model=j2 epoch="2031-05-01T00:00:00Z" semi-major-axis="6793.137 km" eccentricity=0 inclination="44 deg" node="30 deg" perigee="0 deg" anomaly="0 deg" frame=teme half-rate=0 }\n';

/** `more` is further campaign text; one EVA unless `evas` says otherwise. */
export function skyCampaign(
  more: string,
  evas = 'eva day egress="2031-05-01T10:00:00Z" longest="6 h" { out EV1 "5 min"; in EV1 "5 min"; close-hatch "5 min" }',
): Campaign {
  const text = `handrail 1
library standard version="1"
campaign sky "Sky"
person EV1 role=outside suit-limit="7 h"
person IV role=inside
vehicle station hatch=porch {
    place porch { position x="0 m" y="0 m" z="0 m" }
    place bay { position x="0 m" y="0 m" z="0 m"; facing x=0 y=0 z=1; line-of-sight x=1 y=0 z=0 within="20 deg" }
    place shade { position x="0 m" y="0 m" z="0 m"; facing x=0 y=0 z=1 }
    rail porch bay minutes="2 min"
    rail porch shade minutes="2 min"
}
${evas}
task look rank=1 { stint see who=EV1 at=bay { minutes 10 } }
${more}`;
  const { campaign, problems } = readCampaign([{ name: 'sky.kdl', text }], standardLibrary, { templates });
  if (campaign === null) throw new Error(problems.map((one) => `${one.span.line}: ${one.what}`).join('\n'));
  return campaign;
}
