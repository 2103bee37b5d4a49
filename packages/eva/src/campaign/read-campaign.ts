/**
 * Campaign text to campaign: decode, parse, check shapes, write out templates, look up references, resolve units and times.
 * All problems of all files come out of one run; nothing is thrown at the person who wrote the text.
 */
import type { KindsLibrary } from '../kinds/kinds-library.ts';
import type { TaskTemplate } from '../kinds/templates/template.ts';
import { templates } from '../kinds/templates.generated.ts';
import type { Campaign } from './campaign.ts';
import { checkReferences } from './check/check-references.ts';
import { checkShapes } from './check/check-shape.ts';
import { checkVersion } from './check/check-version.ts';
import type { CheckedNode } from './check/checked-node.ts';
import { documentHash } from './json/canonical-json.ts';
import { type Problem, ProblemList } from './problem/problem.ts';
import { buildCampaign } from './read/build-campaign.ts';
import { collectDeclarations } from './read/declarations.ts';
import { ASSUMED_PEOPLE } from './read/read-crew.ts';
import { expandUses } from './read/expand-uses.ts';
import { decodeText } from './text/decode-text.ts';
import { type ParsedFile, parseFile } from './text/parse-file.ts';
import type { CampaignFile } from './text/source-file.ts';
import type { SourceNode } from './text/source-node.ts';

export interface CampaignDocument {
  readonly files: readonly ParsedFile[];
}

export interface CampaignReading {
  /** null when there is an error among the problems. */
  readonly campaign: Campaign | null;
  /** Sorted by place. */
  readonly problems: readonly Problem[];
  /** The text as nodes, with comments and layout, as far as it could be read. */
  readonly document: CampaignDocument;
}

export interface ReadOptions {
  /** Absent: the standard ones. */
  readonly templates?: readonly TaskTemplate[];
  /** Ids of the rules that exist, for waivers; absent: a waiver's rule is not looked up. */
  readonly rules?: readonly string[];
}

/**
 * @param files in the order in which their nodes count; each begins with `handrail 1`
 * @param library verbs, kinds and times
 */
export function readCampaign(
  files: readonly CampaignFile[],
  library: KindsLibrary,
  options: ReadOptions = {},
): CampaignReading {
  const problems = new ProblemList();
  const parsed: ParsedFile[] = [];
  let complete = files.length > 0;
  if (!complete) problems.add('no-file', { file: '', line: 1, column: 1, length: 0 }, 'no file is given');
  for (const file of files) {
    const text = decodeText(file, problems);
    const one = text === null ? null : parseFile(file.name, text, problems);
    if (one !== null) parsed.push(one);
    if (one === null || one.document === null) complete = false;
    else if (!checkVersion(one, problems)) complete = false;
  }
  const sources = parsed.flatMap((one) => one.nodes).filter((node) => node.name !== 'handrail');
  const shaped = checkShapes(sources, 'document', false, library.verbs, problems);
  const lost = lostWords(sources, shaped);
  const nodes = expandUses(shaped, library, options.templates ?? templates, problems);
  let campaign: Campaign | null = null;
  if (complete) {
    const ids = collectDeclarations(nodes, problems);
    if (ids.all('person').length === 0) {
      const nowhere = { file: files[0]?.name ?? '', line: 1, column: 1, length: 0 };
      for (const id of ASSUMED_PEOPLE) ids.add('person', id, null, nowhere, problems);
    }
    checkReferences(nodes, { ids, library, problems, lost });
    const built = buildCampaign(nodes, ids, library, options.rules ?? [], files[0]?.name ?? '', problems);
    if (!problems.hasErrors) campaign = { ...built, documentHash: documentHash(sources) };
  }
  return { campaign, problems: problems.sorted(files.map((file) => file.name)), document: { files: parsed } };
}

/** Words of top-level nodes that could not be read: they may have declared an id. */
function lostWords(sources: readonly SourceNode[], shaped: readonly CheckedNode[]): ReadonlySet<string> {
  const read = new Set(shaped.map((node) => node.source));
  const lost = new Set<string>();
  for (const source of sources) {
    if (read.has(source)) continue;
    for (const entry of source.entries)
      if (entry.name === null && typeof entry.value === 'string') lost.add(entry.value);
  }
  return lost;
}
