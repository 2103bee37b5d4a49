/** The work of a campaign as a table: the columns that `readList` reads, and a few that it leaves alone. */
import type { Campaign } from '@handrail/eva/campaign/campaign';

export const LIST_HEADER: readonly string[] = ['order', 'who', 'what', 'minutes', 'place', 'task', 'stint', 'eva'];

/** One row a stint, in rank order and the order of the text. */
export function campaignToList(campaign: Campaign): readonly (readonly string[])[] {
  const placeless = campaign.vehicle.hatch === null;
  const title = new Map(campaign.vehicle.places.map((place) => [place.id, place.title]));
  const rows = campaign.tasks.flatMap((task) =>
    task.stints.map((stint) => {
      const lead = stint.roles.find((role) => role.name === 'lead');
      const partner = stint.roles.find(
        (role) => role.name === 'partner' && role.fromStep === 0 && role.toStep === stint.steps.length,
      );
      const arm = stint.roles.find((role) => role.name === 'arm');
      const who = lead === undefined ? (arm?.candidates.join(' or ') ?? '') : lead.candidates.join(' or ');
      return [
        partner === undefined ? who : `${who} + ${partner.candidates.join(' or ')}`,
        stint.title,
        String(Math.round((stint.duration.agreedS / 60) * 100) / 100),
        placeless || lead === undefined ? '' : (title.get(lead.at) ?? lead.at),
        task.title,
        stint.key,
        task.evas.join(' '),
      ];
    }),
  );
  return [LIST_HEADER, ...rows.map((row, at) => [String(at + 1), ...row])];
}
