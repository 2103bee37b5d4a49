/** Plays the minutes of an EVA: outside React, since it moves every frame. */
export const RATES = [1, 10, 60, 300, 600] as const;
export type Rate = (typeof RATES)[number];

export interface PlayerParts {
  readonly startS: number;
  readonly endS: number;
  /** Called every frame while it plays, and once on every seek. */
  readonly onTime: (petS: number) => void;
  readonly onStop: () => void;
}

export class Player {
  rate: Rate = 60;
  private readonly parts: PlayerParts;
  private petS: number;
  private frame = 0;
  private last = 0;

  constructor(parts: PlayerParts, petS: number) {
    this.parts = parts;
    this.petS = petS;
  }

  get isPlaying(): boolean {
    return this.frame !== 0;
  }

  seek(petS: number): void {
    this.petS = Math.min(this.parts.endS, Math.max(this.parts.startS, petS));
    this.parts.onTime(this.petS);
  }

  play(): void {
    if (this.isPlaying) return;
    if (this.petS >= this.parts.endS) this.petS = this.parts.startS;
    this.last = performance.now();
    const step = (now: number): void => {
      this.frame = requestAnimationFrame(step);
      this.seek(this.petS + ((now - this.last) / 1000) * this.rate);
      this.last = now;
      if (this.petS >= this.parts.endS) this.pause();
    };
    this.frame = requestAnimationFrame(step);
  }

  pause(): void {
    if (!this.isPlaying) return;
    cancelAnimationFrame(this.frame);
    this.frame = 0;
    this.parts.onStop();
  }
}
