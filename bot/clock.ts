import { Temporal } from "temporal-polyfill";

/** Where the program takes the time from: the machine, a replayed conversation, or the demo's moved clock. */
export interface Clock {
  now(): Temporal.Instant;
}

export const machineClock: Clock = { now: () => Temporal.Now.instant() };

/** A clock that stands where it was set. */
export class SetClock implements Clock {
  private instant: Temporal.Instant;

  constructor(instant: Temporal.Instant) {
    this.instant = instant;
  }

  now(): Temporal.Instant {
    return this.instant;
  }

  set(instant: Temporal.Instant): void {
    this.instant = instant;
  }
}

/** A machine clock moved by a distance that can grow, for trying out what comes later. */
export class MovedClock implements Clock {
  private ahead: Temporal.Duration;

  constructor(ahead: Temporal.Duration) {
    this.ahead = ahead;
  }

  now(): Temporal.Instant {
    return Temporal.Now.instant().add(this.ahead);
  }

  moveTo(instant: Temporal.Instant): void {
    this.ahead = Temporal.Now.instant().until(instant);
  }
}
