/** What stands below the options in each help: how the command is typed, and what its exit codes mean. */

export const PROGRAM_HELP_END = `
Begin with:
  handrail new first.kdl                   a campaign with comments, to change
  handrail plan first.kdl -o first.json    plan it and keep the timeline
  handrail check first.kdl first.json      judge the timeline independently
  handrail explain ID                      what a message means

Exit codes:
  0 fine   1 findings at error level   2 bad input   3 no plan exists
  4 cannot tell: something that is needed is not stated   70 Handrail itself failed
`;

/** As a person types them; one that is missing is missed by a test. */
export const EXAMPLE_LINES: Readonly<Record<string, readonly string[]>> = {
  plan: [
    'plan fulmar.kdl -o fulmar.json',
    'plan fulmar.kdl --eva pump --time 30        Ctrl-C keeps the best so far',
    'plan fulmar.kdl --json > answer.json        docs/schemas/plan.schema.json',
  ],
  check: [
    'check fulmar.kdl fulmar.json',
    'check fulmar.kdl by-hand.txt',
    'check fulmar.kdl     what the text leaves open',
  ],
  prove: [
    'prove fulmar.kdl     plans it first',
    'prove fulmar.kdl fulmar.json',
    'prove fulmar.kdl fulmar.json --move-spread 0.9-1.3',
  ],
  wayhome: [
    'wayhome fulmar.kdl fulmar.json --eva pump',
    'wayhome fulmar.kdl fulmar.json --eva pump --at 2:10 --arm-dead',
  ],
  routes: ['routes fulmar.kdl', 'routes fulmar.kdl porch mast-foot --person EV1'],
  show: ['show fulmar.kdl --states', 'show fulmar.kdl --kind bolt'],
  sky: ['sky fulmar.kdl'],
  open: ['open fulmar.kdl     the address is printed; Ctrl-C ends it'],
  serve: ['serve plans', 'serve plans --host 0.0.0.0 --public-address https://plans.example'],
  backup: ['backup plans plans.backup'],
  restore: ['restore plans.backup plans'],
  light: ['light fulmar.kdl', 'light fulmar.kdl --place pump-bay --eva pump'],
  slip: ['slip fulmar.kdl fulmar.json --step 5 --most 60'],
  supplies: ['supplies fulmar.kdl fulmar.json --eva pump'],
  prebreathe: ['prebreathe fulmar.kdl'],
  fasteners: ['fasteners fulmar.kdl', 'fasteners fulmar.kdl --reading new-bolt-1 turns=14.2 torque="30 N·m"'],
  explain: ['explain clock/clock-is-kept', 'explain | grep tether'],
  compare: ['compare before.kdl after.kdl', 'compare monday.json tuesday.json'],
  why: ['why fulmar.kdl fulmar.json swap-pump/seat-spare'],
  whatif: [
    'whatif fulmar.kdl fulmar.json --list',
    'whatif fulmar.kdl fulmar.json --kit',
    'whatif fulmar.kdl fulmar.json --eva pump --response bolt-will-not-move',
    'whatif fulmar.kdl fulmar.json --eva pump --response bolt-will-not-move --at 1:50',
  ],
  replan: ['replan fulmar.kdl fulmar.json --eva pump --now 2:10 --late swap-pump/free-lines=12 -o new.json'],
  'verify-proof': ['plan fulmar.kdl --proof fulmar.proof', 'verify-proof fulmar.proof'],
  new: ['new first.kdl', 'new first.kdl --from list.csv --egress 2031-09-14T11:40:00Z'],
  export: ['export fulmar.kdl -o fulmar.json', 'export fulmar.kdl --as csv -o fulmar.csv'],
  import: ['import fulmar.json --into folder'],
  demo: ['demo'],
};

/** Only the codes that the command can end with. */
const CODE_LINES: Readonly<Record<string, readonly string[]>> = {
  plan: [
    '0 a plan',
    '1 a plan with findings at error level',
    '2 bad input',
    '3 what an EVA is flown for fits in no plan',
    '4 stopped before any plan was found',
  ],
  check: [
    '0 nothing at error level',
    '1 findings at error level',
    '2 bad input',
    '4 something that a check needs is not stated',
  ],
};

export function commandHelpEnd(name: string): string {
  const examples = EXAMPLE_LINES[name] ?? [];
  const codes = CODE_LINES[name];
  const parts: string[] = [];
  if (examples.length > 0) parts.push(`\n${examples.length === 1 ? 'Example' : 'Examples'}:`);
  for (const line of examples) parts.push(`  handrail ${line}`);
  if (codes !== undefined) parts.push('\nExit codes:', ...codes.map((line) => `  ${line}`));
  else parts.push('\nExit codes: see handrail help');
  return parts.join('\n');
}
