import { ModelBuilder, endOf, not, startOf } from '@handrail/solver/model/build-model';
import {
  FORBIDDEN,
  type IntervalId,
  type LinearTerm,
  type Literal,
  type Model,
  type SequenceMember,
} from '@handrail/solver/model/model';
import { type DrawnCampaign, type DrawnStint, HATCH_TIME } from './draw-campaign.ts';

/**
 * A drawn campaign as a model: a lane a person with travel between places, options where a role is open, states, restraints,
 * windows, clocks. Levels: value of optional work (negated), finish, travel of all.
 */
export function campaignModel(campaign: DrawnCampaign, name: string): Model {
  return new CampaignModel(campaign, name).build();
}

class CampaignModel {
  private readonly campaign: DrawnCampaign;
  private readonly builder: ModelBuilder;
  private readonly masters: IntervalId[] = [];
  /** Who may do each stint: presence per person, null when it is certain, for the first role. */
  private readonly leads: Map<number, Literal | null>[] = [];
  private readonly lanes: SequenceMember[][];

  constructor(campaign: DrawnCampaign, name: string) {
    this.campaign = campaign;
    const { witness, stints, travel, shape } = campaign;
    const home = Math.max(
      ...stints.map((stint, i) => (witness[i] as number) + stint.duration + (travel[stint.to]?.[0] as number)),
    );
    this.builder = new ModelBuilder(name, Math.ceil(1.05 * (home + HATCH_TIME)));
    this.lanes = Array.from({ length: shape.crew }, () => []);
  }

  build(): Model {
    const { builder, campaign } = this;
    campaign.stints.forEach((stint) => this.addStint(stint));
    this.postLanesAndTravel();
    this.postStates();
    this.postRestraints();
    campaign.stints.forEach((stint, i) => {
      if (!stint.isInEclipse) return;
      const [from, to] = [startOf(this.masters[i] as number), endOf(this.masters[i] as number)];
      const windows = campaign.eclipses.filter(([a]) => a < builder.horizon);
      builder.post({ kind: 'windows', mode: 'inside', from, to, windows, when: [], tag: `${stint.name} in eclipse` });
    });
    this.postTasks();
    this.postClocks();
    return builder.build();
  }

  private addStint(stint: DrawnStint): void {
    const { builder } = this;
    const presence = stint.value === null ? null : builder.boolean(`does ${stint.name}`);
    const master = builder.interval(stint.name, stint.duration, presence === null ? {} : { presence });
    this.masters.push(master);
    const everybody = this.lanes.map((_, person) => person);
    stint.crew.forEach((named, role) => {
      // The second role of joint work has an interval of its own that runs with the first.
      const whole =
        role === 0
          ? master
          : builder.interval(`${stint.name} second`, stint.duration, presence === null ? {} : { presence });
      if (role > 0) {
        builder.post({
          kind: 'precedence',
          from: startOf(master),
          to: startOf(whole),
          lag: 0,
          when: [],
          tag: stint.name,
        });
        builder.post({
          kind: 'precedence',
          from: startOf(whole),
          to: startOf(master),
          lag: 0,
          when: [],
          tag: stint.name,
        });
      }
      const who = new Map<number, Literal | null>();
      if (stint.isOpen) {
        const options = everybody.map((person) => {
          const taken = builder.boolean(`person ${person + 1} does ${stint.name} role ${role + 1}`);
          const option = builder.interval(`${stint.name} role ${role + 1} by person ${person + 1}`, stint.duration, {
            presence: taken,
          });
          who.set(person, taken);
          this.lanes[person]?.push(this.member(stint, option));
          return option;
        });
        builder.post({ kind: 'alternative', master: whole, options, tag: `crew of ${stint.name}` });
      } else {
        who.set(named, presence);
        this.lanes[named]?.push(this.member(stint, whole));
      }
      if (role === 0) this.leads.push(who);
    });
  }

  /** Places come first among the types; then, for each swap, "has it in hand" and "takes it from the hand". */
  private member(stint: DrawnStint, interval: IntervalId): SequenceMember {
    const places = this.campaign.travel.length;
    return {
      interval,
      startType: stint.putsDown === null ? stint.from : places + 2 * stint.putsDown + 1,
      endType: stint.picksUp === null ? stint.to : places + 2 * stint.picksUp,
    };
  }

  private transitions(): { types: number; table: number[] } {
    const { travel, swaps, stints } = this.campaign;
    const places = travel.length;
    const types = places + 2 * swaps;
    const placeOf = Array.from({ length: types }, (_, type) => type);
    for (const stint of stints) {
      if (stint.picksUp !== null) placeOf[places + 2 * stint.picksUp] = stint.to;
      if (stint.putsDown !== null) placeOf[places + 2 * stint.putsDown + 1] = stint.from;
    }
    const inHand = (type: number) => (type >= places && (type - places) % 2 === 0 ? (type - places) / 2 : null);
    const fromHand = (type: number) => (type >= places && (type - places) % 2 === 1 ? (type - places - 1) / 2 : null);
    // With an item in hand the next thing is to put it down, and nothing else puts it down.
    const table = placeOf.flatMap((a, from) =>
      placeOf.map((b, to) => (inHand(from) === fromHand(to) ? (travel[a]?.[b] as number) : FORBIDDEN)),
    );
    return { types, table };
  }

  private postLanesAndTravel(): void {
    const { builder } = this;
    const { types, table } = this.transitions();
    const ingresses: IntervalId[] = [];
    const travelTerms: LinearTerm[] = [];
    this.lanes.forEach((members, person) => {
      const egress = builder.interval(`egress ${person + 1}`, HATCH_TIME, { endMax: HATCH_TIME });
      const ingress = builder.interval(`ingress ${person + 1}`, HATCH_TIME);
      ingresses.push(ingress);
      const transitionTotal = builder.variable(`travel ${person + 1}`, 0, builder.horizon);
      travelTerms.push({ coefficient: 1, variable: transitionTotal });
      const hatch = [egress, ingress].map((interval) => ({ interval, startType: 0, endType: 0 }));
      builder.post({
        kind: 'sequence',
        members: [...hatch, ...members],
        types,
        transitions: table,
        first: egress,
        last: ingress,
        transitionTotal,
        tag: `person ${person + 1}`,
      });
    });
    const finish = builder.variable('finish', 0, builder.horizon);
    const points = ingresses.map((id) => endOf(id));
    builder.post({ kind: 'extreme', which: 'max', result: finish, points, otherwise: 0, tag: null });
    const values = this.campaign.stints.flatMap((stint, i) => {
      const presence = builder.intervalAt(this.masters[i] as number).presence;
      return stint.value === null || presence === null
        ? []
        : [{ coefficient: -stint.value, variable: presence.variable }];
    });
    builder.minimise('value', { terms: values, constant: 0 });
    builder.minimise('finish', { terms: [{ coefficient: 1, variable: finish }], constant: 0 });
    builder.minimise('travel', { terms: travelTerms, constant: 0 });
  }

  private postStates(): void {
    const { stints, items } = this.campaign;
    for (let item = 0; item < items; item++) {
      const members = stints.flatMap((stint, i) =>
        stint.item === item ? [{ stint, id: this.masters[i] as number }] : [],
      );
      const tag = `state of item ${item + 1}`;
      const hold = (id: IntervalId) => ({ from: startOf(id), to: endOf(id), tag });
      const writers = members.flatMap(({ stint, id }) =>
        stint.writes === null ? [] : [{ ...hold(id), value: stint.writes }],
      );
      const needs = members.map(({ stint, id }) => ({ ...hold(id), allowed: stint.needs }));
      this.builder.post({ kind: 'state', name: `item ${item + 1}`, values: 2, initial: 0, writers, needs, tag });
    }
  }

  private postRestraints(): void {
    for (let restraint = 0; restraint < this.campaign.restraints; restraint++) {
      const members = this.campaign.stints.flatMap((stint, i) =>
        stint.restraint === restraint ? [{ interval: this.masters[i] as number, demand: 1 }] : [],
      );
      if (members.length < 2) continue;
      this.builder.post({ kind: 'cumulative', capacity: 1, members, tag: `restraint ${restraint + 1}` });
    }
  }

  /** The stints of a task in their order, led by one person throughout. */
  private postTasks(): void {
    const { builder, masters } = this;
    this.campaign.stints.forEach((stint, i) => {
      if (this.campaign.stints[i - 1]?.task !== stint.task) return;
      const tag = `order of task ${stint.task + 1}`;
      const [from, to] = [endOf(masters[i - 1] as number), startOf(masters[i] as number)];
      builder.post({ kind: 'precedence', from, to, lag: 0, when: [], tag });
      for (const [person, led] of this.leads[i - 1] as Map<number, Literal | null>) {
        const leads = this.leads[i]?.get(person) ?? null;
        if (led === null || leads === null) continue;
        builder.post({ kind: 'clause', literals: [not(led), leads], tag: `lead of task ${stint.task + 1}` });
        builder.post({ kind: 'clause', literals: [not(leads), led], tag: `lead of task ${stint.task + 1}` });
      }
    });
  }

  /** Clocks: an item is put down soon after it is picked up; what was opened is closed in time. */
  private postClocks(): void {
    const { builder, masters } = this;
    const { stints, witness, swaps } = this.campaign;
    const clock = (a: number, b: number, most: number, tag: string) => {
      const [from, to] = [startOf(masters[b] as number), endOf(masters[a] as number)];
      builder.post({ kind: 'precedence', from, to, lag: -most, when: [], tag });
    };
    for (let swap = 0; swap < swaps; swap++) {
      const a = stints.findIndex((stint) => stint.picksUp === swap);
      const b = stints.findIndex((stint) => stint.putsDown === swap);
      const [from, to] = [endOf(masters[a] as number), startOf(masters[b] as number)];
      builder.post({ kind: 'precedence', from, to, lag: 0, when: [], tag: `swap ${swap + 1}` });
      const waited = (witness[b] as number) - (witness[a] as number) - (stints[a]?.duration as number);
      clock(a, b, waited + 30, `clock of swap ${swap + 1}`);
    }
    stints.forEach((stint, a) => {
      if (stint.writes !== 1) return;
      const b = stints.findIndex((other, i) => i > a && other.item === stint.item && other.writes === 0);
      if (b < 0) return;
      const open = (witness[b] as number) - (witness[a] as number) - stint.duration;
      // The later of the two openings may be closed by either closing: only the first pair has a clock.
      const isFirst = stints.findIndex((other) => other.item === stint.item) === a;
      if (isFirst) clock(a, b, Math.ceil(1.5 * open) + 30, `clock of item ${(stint.item ?? 0) + 1}`);
    });
  }
}
