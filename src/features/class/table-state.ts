/** What of the files of a class is read and set against the flight, in two steps that can be cancelled. */
import { type Accessor, createEffect, createMemo, createSignal, on, onCleanup } from 'solid-js';
import type { ClassFiles, ClassOfFiles, ClassTable, GivenFile } from '../../../sim/index.ts';
import { wordFault } from '../../app/say/fault-words.ts';
import type { Classing } from '../../engine/class.ts';
import { tableTexts as t } from './table-words.ts';

interface TableWork {
  readonly text: string;
  readonly done: number;
  readonly all: number;
}

export interface TableState {
  readonly read: Accessor<ClassFiles | undefined>;
  /** the class that is shown */
  readonly shown: Accessor<ClassOfFiles | undefined>;
  /** with the class it is of */
  readonly table: Accessor<{ readonly of: ClassOfFiles; readonly table: ClassTable } | undefined>;
  readonly others: Accessor<readonly ClassOfFiles[]>;
  show(of: ClassOfFiles): void;
  readonly work: Accessor<TableWork | undefined>;
  cancel(): void;
  /** it was cancelled, or failed: why */
  readonly ended: Accessor<string | undefined>;
  again(): void;
}

interface Cancelling {
  cancel(): void;
}

export function makeTableState(classing: Classing, files: Accessor<readonly GivenFile[]>): TableState {
  const [read, setRead] = createSignal<ClassFiles>();
  const [digest, setDigest] = createSignal<string>();
  const [table, setTable] = createSignal<{ of: ClassOfFiles; table: ClassTable }>();
  const [work, setWork] = createSignal<TableWork>();
  const [ended, setEnded] = createSignal<string>();
  let call: Cancelling | undefined;
  const stop = (): void => {
    const last = call;
    call = undefined;
    last?.cancel();
    setWork(undefined);
  };
  /** One call at a time; what ends after a newer one began says nothing. */
  const follow = <T>(next: Cancelling & { readonly done: Promise<T> }, then: (result: T) => void): void => {
    call = next;
    next.done.then(
      (result) => {
        if (call !== next) return;
        call = undefined;
        setWork(undefined);
        then(result);
      },
      (error: unknown) => {
        if (call !== next) return;
        stop();
        setEnded(t.failed(wordFault(error)));
      },
    );
  };
  const shown = createMemo(() => {
    const classes = read()?.classes ?? [];
    return classes.find((one) => one.digest === digest()) ?? classes[0];
  });
  const tabulate = (): void => {
    const of = shown();
    if (!of || table()?.of === of) return;
    stop();
    setEnded(undefined);
    const all = of.handed.length;
    setWork({ text: t.flying, done: 0, all });
    const next = classing.tabulate(of, (done) => setWork({ text: t.computing(done, all), done, all }));
    follow(next, (result) => setTable({ of, table: result }));
  };
  const readAll = (): void => {
    stop();
    setEnded(undefined);
    const given = files();
    if (given.length === 0) {
      setRead(undefined);
      setTable(undefined);
      return;
    }
    const all = given.length;
    setWork({ text: t.reading(0, all), done: 0, all });
    const next = classing.readFiles(given, (done) => setWork({ text: t.reading(done, all), done, all }));
    follow(next, (result) => {
      setRead(result);
      tabulate();
    });
  };
  createEffect(on(files, readAll));
  onCleanup(stop);
  return {
    read,
    shown,
    table: () => {
      const now = table();
      return now && now.of === shown() ? now : undefined;
    },
    others: () => (read()?.classes ?? []).filter((one) => one !== shown()),
    show: (of) => {
      setDigest(of.digest);
      tabulate();
    },
    work,
    cancel: () => {
      stop();
      setEnded(t.cancelled(files().length));
    },
    ended,
    again: () => (read() ? tabulate() : readAll()),
  };
}
