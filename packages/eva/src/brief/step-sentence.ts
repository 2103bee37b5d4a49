/** A step as a crew member would read it aloud: verb first, then hardware, then counts. */
import type { Campaign, Step } from '../campaign/campaign.ts';

export function stepSentence(campaign: Campaign, step: Step): string {
  const title = (id: string): string => titleOf(campaign, id);
  const parts = [capital(step.verb.replaceAll('-', ' '))];
  if (step.objects.length > 0) parts.push(listOf(step.objects));
  if (step.from !== null) parts.push(`from ${title(step.from)}`);
  if (step.to !== null) parts.push(`to ${title(step.to)}`);
  if (step.tool !== null) parts.push(`with ${title(step.tool)}`);
  const counts: string[] = [];
  if (step.turns !== null) counts.push(`${step.turns} turns`);
  if (step.torqueNm !== null) counts.push(`${step.torqueNm} N·m`);
  if (step.settings !== null) counts.push(step.settings);
  return `${parts.join(' ')}${counts.length === 0 ? '' : `, ${counts.join(', ')}`}`;
}

export function titleOf(campaign: Campaign, id: string): string {
  return (
    campaign.vehicle.places.find((place) => place.id === id)?.title ??
    campaign.hardware.find((piece) => piece.id === id)?.title ??
    campaign.people.find((person) => person.id === id)?.id ??
    campaign.arms.find((arm) => arm.id === id)?.title ??
    id
  );
}

export function listOf(words: readonly string[]): string {
  if (words.length <= 1) return words.join('');
  return `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
