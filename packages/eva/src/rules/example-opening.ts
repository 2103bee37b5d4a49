/** The campaign text that stands before every rule's example: two people, a reader, eight places, one EVA. Invented. */
export const EXAMPLE_OPENING = `handrail 1
library standard version="1"
campaign example "Example"
person EV1 role=outside suit-limit="7 h" anchor=porch-anchor tether="26 m" carries=4
person EV2 role=outside suit-limit="7 h" anchor=porch-anchor-two tether="26 m" carries=4
person IV role=inside
vehicle station "Station" hatch=porch {
    load-class large factor=1.5 fills-hands=#true
    place porch family=core
    place bay family=spine {
        position x="6 m" y="0 m" z="0 m"
        facing x=0 y=0 z=1
        line-of-sight x=1 y=0 z=0 within="20 deg"
    }
    place tip family=spine
    place side family=spine
    place up family=spine
    place down family=spine
    place wing family=wings
    place nozzle family=spine keep-out=#true
    rail porch bay minutes="4 min" length="6 m"
    rail bay tip minutes="4 min" length="6 m"
    rail porch side minutes="5 min" length="8 m"
    rail porch nozzle minutes="3 min" length="4 m"
    rail bay up minutes="2 min" length="3 m"
    rail bay down minutes="2 min" length="3 m"
    rail bay wing minutes="3 min" length="4 m" {
        open-while wing-joint parked locked
    }
}
eva day egress="2031-05-01T10:00:00Z" longest="6 h" {
    out EV1 "5 min"
    out EV2 "5 min"
    in EV2 "5 min"
    in EV1 "5 min"
    close-hatch "5 min"
}
hardware porch-anchor porch-anchor-two kind=anchor at=porch
hardware wing-joint kind=rotating-joint at=bay state=locked
`;

/** Passages out at the start and in at \`inAt\` minutes of PET, for the timeline of an example. */
export const OUT = 'eva day\nEV1 0:00-0:05 out\nEV2 0:05-0:10 out\n';

/** An invented orbit for examples. With node 120° the vehicle is in the weak field from 10:06 to 10:25 UTC on 2031-05-01; with 240° it passes none. */
export const exampleOrbit = (node: 120 | 240, epoch = '2031-05-01'): string =>
  `orbit { kepler model=j2 epoch="${epoch}T00:00:00Z" semi-major-axis="6793 km" eccentricity=0 inclination="44 deg" node="${node} deg" perigee="0 deg" anomaly="0 deg" frame=teme half-rate=0.0001 }
attitude law=local-vertical yaw="0 deg" pitch="0 deg" roll="180 deg"
`;
