// One direction of imports. Every ban has a name and a reason; a red line here means the design is being bent.
const pure = '^packages/';
module.exports = {
  forbidden: [
    { name: 'no-cycles', comment: 'A cycle means two concepts are one, or a third one has no name yet.', severity: 'error', from: {}, to: { circular: true } },
    { name: 'quantity-knows-nothing', comment: 'Units and time scales stand under everything.', severity: 'error', from: { path: '^packages/quantity/' }, to: { path: '^packages/(?!quantity/)' } },
    { name: 'solver-has-never-heard-of-a-spacewalk', comment: 'The engine is checked on open benchmarks; trade words stay in eva/schedule.', severity: 'error', from: { path: '^packages/solver/' }, to: { path: '^packages/(?!solver/)' } },
    { name: 'checker-sees-only-the-model', comment: 'A checker that shares reasoning with the engine shares its mistakes.', severity: 'error', from: { path: '^packages/solver-checker/' }, to: { path: '^packages/', pathNot: '^packages/(solver-checker/|solver/src/model/)' } },
    { name: 'only-schedule-meets-the-solver', comment: 'Rounding and tagging of requirements happen in one room.', severity: 'error', from: { path: '^packages/eva/', pathNot: '^packages/eva/src/schedule/' }, to: { path: '^packages/solver' } },
    { name: 'the-second-opinion-is-independent', comment: 'The replay shares no code with the scheduler, so that one mistake cannot hide in both.', severity: 'error', from: { path: '^packages/eva/src/(proof|rules)/' }, to: { path: '^packages/eva/src/schedule/' } },
    { name: 'the-schedule-does-not-read-the-proof', comment: 'Nothing downstream is read upstream.', severity: 'error', from: { path: '^packages/eva/src/schedule/' }, to: { path: '^packages/eva/src/(proof|rules|brief|day|debrief)/' } },
    { name: 'rules-never-import-rules', comment: 'A rule is read, tested and waived alone.', severity: 'error', from: { path: '^packages/eva/src/rules/[^/]+/.+' }, to: { path: '^packages/eva/src/rules/[^/]+/' } },
    { name: 'eva-does-not-know-the-wire', comment: 'Versions and schemas of what crosses a file or network stand outside the trade.', severity: 'error', from: { path: '^packages/(eva|solver|quantity|solver-checker)/' }, to: { path: '^packages/wire/' } },
    { name: 'packages-are-pure', comment: 'No files, clock, network or randomness under packages: seeds and instants are arguments.', severity: 'error', from: { path: pure }, to: { dependencyTypes: ['core'] } },
    { name: 'packages-do-not-read-apps', comment: 'Apps stand on packages.', severity: 'error', from: { path: pure }, to: { path: '^apps/' } },
    { name: 'apps-meet-in-wire', comment: 'Apps share formats, not code.', severity: 'error', from: { path: '^apps/([^/]+)/' }, to: { path: '^apps/', pathNot: '^apps/$1/' } },
  ],
  options: { parser: 'swc', tsPreCompilationDeps: true, doNotFollow: { path: 'node_modules' }, exclude: { path: '(^|/)dist/' }, enhancedResolveOptions: { exportsFields: ['exports'], conditionNames: ['import', 'default'] }, tsConfig: { fileName: 'tsconfig.base.json' } },
};
