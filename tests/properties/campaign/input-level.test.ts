import { inputLevel, inputLevelSentence } from '@handrail/eva/campaign/input-level';
import { NO_SKY } from '@handrail/eva/campaign/campaign-sky';
import { describe, expect, test } from 'vitest';
import { fulmarCampaign } from '../../support/planned-fulmar.ts';

describe('input level', () => {
  const { campaign, hardware } = fulmarCampaign();

  test('the demo states orbit, radio, attitude and bodies: level 4', () => {
    const level = inputLevel(campaign, hardware);
    expect([level.level, level.title]).toEqual([4, 'orbit and bodies']);
    expect(inputLevelSentence(level)).toContain('light and coverage computed from the stated orbit');
  });

  test('without an orbit it is level 3 and says what level 4 lacks', () => {
    const written = campaign.windows.filter(({ computed }) => computed === undefined);
    const level = inputLevel({ ...campaign, windows: written, sky: NO_SKY }, hardware);
    expect(level.level).toBe(3);
    expect(level.missing).toContain('the orbit');
    expect(level.missing).toContain('a window computed=night');
  });

  test('an orbit without its windows computed is not level 4', () => {
    const windows = campaign.windows.map((window) =>
      window.computed === undefined ? window : { ...window, computed: { ...window.computed, filled: false } },
    );
    expect(inputLevel({ ...campaign, windows }, hardware).missing).toEqual([
      'a window computed=night',
      'a relay or ground station and a window computed=coverage-gap',
    ]);
  });
});
