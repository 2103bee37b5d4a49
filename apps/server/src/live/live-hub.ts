/** Streams of events to the pages that are open. Events come out of the store, so that a stream can go on where it broke off. */
import type { ServerResponse } from 'node:http';
import type { LiveEvent } from '@handrail/wire/api/api-types';
import type { CampaignStore } from '../storage/storage.ts';

/** How often the store is asked for what another server wrote, and a sign of life is sent. */
const BEAT_MS = 10_000;
/** Somebody who has not said where they are for so long has gone. */
const PRESENT_MS = 60_000;
const MOST_STREAMS_OF_ONE = 20;

interface Stream {
  readonly campaign: string;
  readonly user: string;
  readonly name: string;
  readonly out: ServerResponse;
  sent: number;
  /** One reading of the store at a time: events leave in order. */
  pumping: Promise<void>;
}

export class LiveHub {
  private readonly campaigns: CampaignStore;
  private readonly streams = new Set<Stream>();
  private readonly places = new Map<string, Map<string, { name: string; at: string; atMs: number }>>();
  private readonly beat: NodeJS.Timeout;

  constructor(campaigns: CampaignStore) {
    this.campaigns = campaigns;
    this.beat = setInterval(() => this.onBeat(), BEAT_MS);
    this.beat.unref();
  }

  get count(): number {
    return this.streams.size;
  }

  /** @param after number of the last event that the page has; null: it begins with what comes next */
  async follow(
    campaign: string,
    user: { id: string; name: string },
    out: ServerResponse,
    after: number | null,
  ): Promise<void> {
    const sent = after ?? (await this.campaigns.lastEvent(campaign));
    const stream: Stream = { campaign, user: user.id, name: user.name, out, sent, pumping: Promise.resolve() };
    const mine = [...this.streams].filter((other) => other.user === user.id);
    if (mine.length >= MOST_STREAMS_OF_ONE) mine[0]?.out.end();
    this.streams.add(stream);
    out.on('close', () => {
      this.streams.delete(stream);
      this.forget(campaign);
    });
    out.write('retry: 2000\n\n');
    this.setPlace(campaign, user, this.places.get(campaign)?.get(user.id)?.at ?? '');
    await this.pump(stream);
  }

  /** Somebody is looking at a place of the campaign. */
  setPlace(campaign: string, user: { id: string; name: string }, at: string): void {
    const people = this.places.get(campaign) ?? new Map();
    people.set(user.id, { name: user.name, at, atMs: Date.now() });
    this.places.set(campaign, people);
    this.showPeople(campaign);
  }

  /** Something was written: whoever follows the campaign gets it now. */
  async poke(campaign: string): Promise<void> {
    await Promise.all(
      [...this.streams].filter((stream) => stream.campaign === campaign).map((stream) => this.pump(stream)),
    );
  }

  /** Ends the streams of somebody whose rights have changed. */
  dismiss(user: string): void {
    for (const stream of this.streams) if (stream.user === user) stream.out.end();
  }

  close(): void {
    clearInterval(this.beat);
    for (const stream of this.streams) stream.out.end();
  }

  private async pump(stream: Stream): Promise<void> {
    const next = this.sendAfter(stream.pumping, stream);
    // A store that does not answer now is asked again at the next beat.
    stream.pumping = next.catch(() => {});
    await stream.pumping;
  }

  private async sendAfter(before: Promise<void>, stream: Stream): Promise<void> {
    await before;
    for (const { event, data } of await this.campaigns.eventsAfter(stream.campaign, stream.sent)) {
      stream.out.write(`id: ${event}\ndata: ${JSON.stringify(data)}\n\n`);
      stream.sent = event;
    }
  }

  private showPeople(campaign: string): void {
    const people = [...(this.places.get(campaign)?.values() ?? [])].map(({ name, at }) => ({ name, at }));
    const event: LiveEvent = { kind: 'presence', people };
    for (const stream of this.streams) {
      if (stream.campaign === campaign) stream.out.write(`data: ${JSON.stringify(event)}\n\n`);
    }
  }

  private forget(campaign: string): void {
    const people = this.places.get(campaign);
    if (people === undefined) return;
    const here = new Set([...this.streams].filter((stream) => stream.campaign === campaign).map(({ user }) => user));
    const gone = [...people].filter(([user, { atMs }]) => !here.has(user) && Date.now() - atMs > 2000);
    for (const [user] of gone) people.delete(user);
    if (people.size === 0) this.places.delete(campaign);
    if (gone.length > 0) this.showPeople(campaign);
  }

  private onBeat(): void {
    for (const stream of this.streams) {
      stream.out.write(': still here\n\n');
      void this.pump(stream);
    }
    for (const [campaign, people] of this.places) {
      const here = new Set([...this.streams].filter((stream) => stream.campaign === campaign).map(({ user }) => user));
      for (const [user, { atMs }] of people) {
        if (!here.has(user) && Date.now() - atMs > PRESENT_MS) people.delete(user);
      }
      if (people.size === 0) this.places.delete(campaign);
    }
  }
}
