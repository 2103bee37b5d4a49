import { derivedStore } from '../../derived/derived-store.ts';
import { documentStore } from '../../document/document-store.ts';

/** Title of the open campaign as its text says it; its id where the text cannot be read. */
export function campaignTitle(): string {
  return derivedStore.getState().opening.value?.campaign?.title ?? documentStore.getState().campaignId ?? 'Handrail';
}
