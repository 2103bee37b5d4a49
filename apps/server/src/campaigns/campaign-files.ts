/** The files that a campaign is mirrored to: its text, and beside it the timeline. Written whole or not at all. */
import { createHash, randomBytes } from 'node:crypto';
import { closeSync, existsSync, fsyncSync, openSync, readFileSync, renameSync, rmSync, writeSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import type { VersionWhole } from '@handrail/wire/api/api-types';
import { readTimelineJson, writeTimelineJson } from '@handrail/wire/timeline/timeline-schema';
import type { FileHashes } from '../storage/storage.ts';

export interface OnDisk extends FileHashes {
  /** null: there is no file, or it is not UTF-8. */
  readonly text: string | null;
  /** null: there is none, or none that can be read. */
  readonly timeline: VersionWhole['timeline'];
}
/** Written beside their places and on the disk; `place` puts them there, in an instant. */
export interface Prepared {
  readonly hashes: FileHashes;
  place(): void;
  discard(): void;
}

export const hashOf = (content: Uint8Array | string): string => createHash('sha256').update(content).digest('hex');
export const timelineFile = (file: string): string => file.replace(/\.kdl$/, '') + '.timeline.json';
const written = (timeline: VersionWhole['timeline']): string | null =>
  timeline === null ? null : writeTimelineJson(timeline);

/** Hashes that the files of a version have. */
export function hashesOf({ text, timeline }: Pick<VersionWhole, 'text' | 'timeline'>): FileHashes {
  const words = written(timeline);
  return { textHash: hashOf(text), timelineHash: words === null ? null : hashOf(words) };
}

export function readFiles(file: string): OnDisk {
  const bytes = bytesOf(file);
  const plan = bytesOf(timelineFile(file));
  const text = bytes?.toString('utf8') ?? null;
  const isText = text !== null && bytes !== null && Buffer.from(text, 'utf8').equals(bytes) && !text.includes('\0');
  return {
    text: isText ? text : null,
    textHash: bytes === null ? null : hashOf(bytes),
    timeline: plan === null ? null : timelineIn(plan),
    timelineHash: plan === null ? null : hashOf(plan),
  };
}

/** @throws when a file cannot be written: nothing has changed then */
export function prepareFiles(file: string, version: Pick<VersionWhole, 'text' | 'timeline'>): Prepared {
  const plan = written(version.timeline);
  const textDraft = writeBeside(file, version.text);
  let planDraft: string | null = null;
  try {
    if (plan !== null) planDraft = writeBeside(timelineFile(file), plan);
  } catch (cause) {
    rmSync(textDraft, { force: true });
    throw cause;
  }
  return {
    hashes: { textHash: hashOf(version.text), timelineHash: plan === null ? null : hashOf(plan) },
    place: () => {
      renameSync(textDraft, file);
      const planFile = timelineFile(file);
      const there = bytesOf(planFile);
      // What is no timeline of ours is not ours to write over or to take away.
      if (there !== null && timelineIn(there) === null) renameSync(planFile, `${planFile}.aside-${Date.now()}`);
      if (planDraft !== null) renameSync(planDraft, planFile);
      else rmSync(planFile, { force: true });
      syncFolder(dirname(file));
    },
    discard: () => {
      rmSync(textDraft, { force: true });
      if (planDraft !== null) rmSync(planDraft, { force: true });
    },
  };
}

/** @throws when the folder cannot be written to */
export function writeBeside(file: string, content: string | Uint8Array): string {
  const draft = join(dirname(file), `.${basename(file)}.${randomBytes(6).toString('hex')}.part`);
  const open = openSync(draft, 'wx');
  try {
    const bytes = Buffer.from(content);
    for (let at = 0; at < bytes.length; ) at += writeSync(open, bytes, at);
    fsyncSync(open);
  } catch (cause) {
    rmSync(draft, { force: true });
    throw cause;
  } finally {
    closeSync(open);
  }
  return draft;
}

function syncFolder(folder: string): void {
  // Windows has no such thing; there a rename is as safe as the file system makes it.
  if (process.platform === 'win32') return;
  const open = openSync(folder, 'r');
  fsyncSync(open);
  closeSync(open);
}

function bytesOf(file: string): Buffer | null {
  return existsSync(file) ? readFileSync(file) : null;
}

function timelineIn(bytes: Buffer): VersionWhole['timeline'] {
  try {
    return readTimelineJson(bytes.toString('utf8')) as VersionWhole['timeline'];
  } catch {
    return null;
  }
}
