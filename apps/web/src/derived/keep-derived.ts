/** Works out again what has become stale: reading and replay at once, rules and ways home behind them. What is old is shown as old. */
import { documentStore } from '../document/document-store.ts';
import { checkingWorker, provingWorker } from '../workers/connect.ts';
import { type DerivedState, derivedStore } from './derived-store.ts';

/** One piece of work that runs again until it has seen the newest revision; never twice at once. */
class Keeper {
  private isBusy = false;
  private readonly work: (revision: number) => Promise<void>;

  constructor(work: (revision: number) => Promise<void>) {
    this.work = work;
  }

  async wake(): Promise<void> {
    if (this.isBusy) return;
    this.isBusy = true;
    try {
      for (let done = -1; done !== documentStore.getState().revision; ) {
        done = documentStore.getState().revision;
        await this.work(done);
      }
    } finally {
      this.isBusy = false;
    }
  }
}

let openedText: string | null = null;

const quick = new Keeper(async (revision) => {
  const { copy } = documentStore.getState();
  const known = derivedStore.getState().opening.value;
  running('opening', true);
  try {
    const opening = openedText === copy.text && known !== null ? known : await checkingWorker().open(copy.text);
    openedText = copy.text;
    derivedStore.setState({ opening: { revision, value: opening, isRunning: false, failed: null } });
    if (opening.campaign === null || copy.timeline === null) {
      derivedStore.setState({ judged: { revision, value: null, isRunning: false, failed: null } });
      return;
    }
    const judged = await checkingWorker().judge(copy.text, copy.timeline, 'replay', Date.now());
    derivedStore.setState((was) => {
      // The whole judgement may have been faster.
      const isKnown = was.judged.revision >= revision && was.judged.value?.hasWaysHome === true;
      return isKnown ? {} : { judged: { revision, value: judged, isRunning: true, failed: null } };
    });
  } catch (cause) {
    failed('opening', cause);
  }
});

const whole = new Keeper(async (revision) => {
  const { copy } = documentStore.getState();
  if (copy.timeline === null) return;
  running('judged', true);
  try {
    const judged = await provingWorker().judge(copy.text, copy.timeline, 'all', Date.now());
    if (judged === null || documentStore.getState().revision !== revision) return;
    derivedStore.setState({ judged: { revision, value: judged, isRunning: false, failed: null } });
  } catch (cause) {
    failed('judged', cause);
  }
});

export function keepDerived(): void {
  const wake = (): void => {
    void quick.wake();
    void whole.wake();
  };
  documentStore.subscribe((now, was) => {
    if (now.revision !== was.revision) wake();
  });
  wake();
}

function running(what: keyof DerivedState, isRunning: boolean): void {
  derivedStore.setState((was) => ({ [what]: { ...was[what], isRunning } }));
}

function failed(what: keyof DerivedState, cause: unknown): void {
  const words = cause instanceof Error ? cause.message : String(cause);
  derivedStore.setState((was) => ({ [what]: { ...was[what], isRunning: false, failed: words } }));
}
