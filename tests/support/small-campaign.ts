/** Two people, three places, a connector under a request: enough for every view, planned within a second. */
export const SMALL_CAMPAIGN = `handrail 1
library standard version="1"
campaign small "Small campaign"
person EV1 role=outside suit-limit="7 h"
person EV2 role=outside suit-limit="7 h"
person IV role=inside
vehicle station hatch=porch {
    place porch "Porch"
    place bay "Pump bay"
    place mast "Mast"
    rail porch bay minutes="4 min" length="9 m"
    rail bay mast minutes="3 min" length="6 m"
}
limits {
    home-within "30 min"
    margin "15 min"
}
eva one "First EVA" egress="2031-09-14T11:40:00Z" longest="6 h 30 min" {
    out EV1 "8 min"
    out EV2 "6 min"
    in EV2 "6 min"
    in EV1 "6 min"
    close-hatch "7 min"
}
request bus-off "Pump power off" owner=power inhibits=2 lead="10 min" verify="2 min" clear="5 min" status=asked
hardware j1 j2 "Connector" kind=power-connector at=bay state=mated controls=bus-off
objective cables rank=1 "Cables free" {
    tasks free-cables
}
task free-cables rank=1 "Free the cables" {
    stint open "Open the connectors" who=EV1 at=bay {
        demate j1 j2
        minutes low=6 likely=8 high=12
    }
}
task look-mast rank=2 "Look at the mast" {
    stint look "Look and report" who=EV2 at=mast {
        inspect mast
        minutes 10
    }
}
insert look-around rank=3 "Look around the bay" {
    stint around "Look around" who=EV2 at=bay {
        inspect bay
        minutes 15
    }
}
`;
