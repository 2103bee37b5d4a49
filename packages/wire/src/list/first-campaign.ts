/** Every line says why it is there; the whole reads without a problem. */
export function firstCampaign(egress: string): string {
  return `// A campaign is text: nodes with values, properties and inner nodes. This is the version of the format.
handrail 1
library standard version="1"
campaign first "First campaign"

// Who: EV1 and EV2 in suits, IV reads the steps. What you leave out stays unknown and is shown so.
person EV1 "First out" role=outside suit-limit="7 h"
person EV2 "Second out" role=outside suit-limit="7 h"
person IV "Reader" role=inside

// Where: places and the minutes between them. Without a vehicle the plan still runs, and counts no travel.
vehicle station "Station" hatch=porch {
    place porch "Porch"
    place bay "Pump bay"
    rail porch bay minutes="4 min" length="9 m"
}

// The operator's limits. None has a default.
limits {
    home-within "30 min"
    margin "15 min"
}

// When: PET 0, the passages through the hatch in order, and the longest time out.
eva one "EVA 1" egress="${egress}" longest="6 h 30 min" {
    out EV1 "8 min"
    out EV2 "6 min"
    in EV2 "6 min"
    in EV1 "6 min"
    close-hatch "7 min"
}

// What is asked of the vehicle, and how long it takes to set and to verify. Connectors must not be opened live.
request bus-off "Pump power off" owner=power inhibits=2 lead="10 min" verify="2 min" clear="5 min" status=agreed

// With what: each piece has a kind, which knows its states and verbs.
hardware j1 j2 "Connector" kind=power-connector at=bay state=mated controls=bus-off

// The work, most important first. A stint is one stay of fixed people at one place.
task free-cables rank=1 "Free the cables" {
    stint open "Open the connectors" who=EV1 at=bay {
        demate j1 j2
        minutes low=6 likely=8 high=12
    }
}

// Worth doing if there is room; dropped first when late.
insert look-around rank=2 "Look around the bay" {
    stint look "Look and report" who=EV2 at=bay {
        inspect bay
        minutes 10
    }
}
`;
}
