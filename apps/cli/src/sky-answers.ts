/** What `sky`, `light` and `slip` tell, as `--json` promises it. */
import type { Campaign } from '@handrail/eva/campaign/campaign';
import type { LightReport } from '@handrail/eva/sky/campaign/light-report';
import type { EvaSky } from '@handrail/eva/sky/campaign/sky-report';
import type { Orbit } from '@handrail/eva/sky/orbit';
import type { EvaSlip } from '@handrail/eva/slip/slip-table';
import type { AnswerBody } from '@handrail/wire/answer/define-answer';
import { findingOnTheWire, isoUtc } from '@handrail/wire/answer/finding-on-the-wire';
import type { light } from '@handrail/wire/answers/light';
import type { sky } from '@handrail/wire/answers/sky';
import type { slip } from '@handrail/wire/answers/slip';

type SkyAnswer = AnswerBody<typeof sky>;

const utcOrNull = (utcMs: number | null): string | null => (utcMs === null ? null : isoUtc(utcMs));

export function skyAnswer(campaign: Campaign, orbit: Orbit, evas: readonly EvaSky[]): SkyAnswer {
  return {
    campaign: campaign.id,
    documentHash: campaign.documentHash,
    orbit: {
      name: orbit.name,
      model: orbit.kind,
      epoch: isoUtc(orbit.epochUtcMs),
      periodS: evas[0]?.periodS ?? 0,
      assumptions: orbit.kind === 'sgp4' ? orbit.assumptions : [],
    },
    evas: evas.map((one) => evaAnswer(campaign, one)),
  };
}

function evaAnswer(campaign: Campaign, one: EvaSky): SkyAnswer['evas'][number] {
  const pet = (utcMs: number): number => Math.round((utcMs - one.startUtcMs) / 1000);
  const { age, radio, field } = one;
  return {
    eva: one.eva.id,
    from: isoUtc(one.startUtcMs),
    to: isoUtc(one.endUtcMs),
    elements: {
      ageDays: age.ageDays,
      alongTrackErrorKm: age.alongTrackErrorKm,
      timingErrorS: age.timingErrorS,
      padS: one.padS,
      basis: age.basis,
    },
    betaRad: { from: one.betaRad[0], to: one.betaRad[1] },
    litFraction: one.litFraction,
    nights: one.nights.map((night) => ({
      sunset: utcOrNull(night.sunsetUtcMs),
      darkFrom: utcOrNull(night.darkFromUtcMs),
      darkTo: utcOrNull(night.darkToUtcMs),
      sunrise: utcOrNull(night.sunriseUtcMs),
      nightS: Math.round(night.nightS),
      darkS: Math.round(night.umbraS),
    })),
    radio:
      radio === null
        ? null
        : {
            coveredFraction: radio.coveredFraction,
            contacts: radio.contacts.map((contact) => ({
              partner: contact.partner,
              aos: utcOrNull(contact.aosUtcMs),
              los: utcOrNull(contact.losUtcMs),
              fromS: pet(contact.startUtcMs),
              toS: pet(contact.endUtcMs),
              lostBehind: contact.losCause,
            })),
            gaps: radio.gaps.map((gap) => ({
              los: utcOrNull(gap.losUtcMs),
              aos: utcOrNull(gap.aosUtcMs),
              fromS: pet(gap.startUtcMs),
              toS: pet(gap.endUtcMs),
              cause: gap.cause,
            })),
            notes: radio.notes,
          },
    weakField:
      field === null
        ? null
        : {
            thresholdNt: campaign.sky.fieldRegion?.thresholdNt ?? 0,
            insideS: Math.round(field.insideS),
            limitS: field.limitS,
            passes: field.passes.map((pass) => ({
              fromS: pet(pass.startUtcMs),
              toS: pet(pass.endUtcMs),
              weakestNt: pass.weakestNt,
            })),
            note: field.note,
          },
  };
}

export function lightAnswer(campaign: Campaign, report: LightReport): AnswerBody<typeof light> {
  return {
    campaign: campaign.id,
    documentHash: campaign.documentHash,
    places: report.places.map((one) => ({
      eva: one.eva,
      place: one.place,
      from: isoUtc(one.startUtcMs),
      to: isoUtc(one.endUtcMs),
      litFraction: one.litFraction,
      spans: one.spans.map(({ startUtcMs, endUtcMs, state, by, sunElevationRad }) => ({
        fromS: Math.round((startUtcMs - one.startUtcMs) / 1000),
        toS: Math.round((endUtcMs - one.startUtcMs) / 1000),
        state,
        by,
        sunElevationRad:
          sunElevationRad === null
            ? null
            : { from: sunElevationRad[0], middle: sunElevationRad[1], to: sunElevationRad[2] },
      })),
    })),
    notes: [...report.notes].map(([eva, notes]) => ({ eva, notes })),
    unknown: report.unknown,
  };
}

export function slipAnswer(campaign: Campaign, slips: readonly EvaSlip[]): AnswerBody<typeof slip> {
  return {
    campaign: campaign.id,
    documentHash: campaign.documentHash,
    evas: slips.map(({ eva, petZeroUtcMs, statedSlipS, cleanUntilS, lastAcceptableS, rows }) => ({
      eva,
      petZero: isoUtc(petZeroUtcMs),
      statedSlipS,
      cleanUntilS,
      lastAcceptableS,
      rows: rows.map((row) => {
        const zeros = new Map([[eva, petZeroUtcMs + row.lateS * 1000]]);
        return {
          lateS: row.lateS,
          breaks: row.breaks.map((found) => findingOnTheWire(found, zeros)),
          waits: row.waits.map(({ stint, window, waitS, startS, intervalS }) => ({
            stint,
            window,
            waitS,
            startS,
            interval: { fromS: intervalS[0], toS: intervalS[1] },
          })),
          left: row.left.map((found) => findingOnTheWire(found, zeros)),
          bothInS: row.bothInS,
          beforeTheWallS: row.beforeTheWallS,
          cut: row.cut,
          acceptable: row.acceptable,
        };
      }),
    })),
  };
}
