/** What a studied recording becomes: a version beside the skill, a fitted one, a file. One at a time, each with its progress and a way to stop it. */
import { type Accessor, createEffect, createSignal, on } from 'solid-js';
import { saveBlob } from '../../app/file-door.ts';
import type { Page } from '../../app/page.ts';
import { putVersion } from '../../app/put-version.ts';
import { VERSION_LETTERS } from '../../document/versions.ts';
import type { Recordings } from '../../engine/recording.ts';
import type { RecordedForm, RecordingFitted, RecordingProgress } from '../../jobs/kinds/recording-data.ts';
import type { JobCall } from '../../jobs/pool.ts';
import { wordRecordingFault } from './recording-fault.ts';
import type { RecordingState } from './recording-state.ts';
import { recordingTexts as t } from './recording-words.ts';

interface RecordingActs {
  readonly work: Accessor<RecordingProgress | undefined>;
  cancel(): void;
  readonly fault: Accessor<string | undefined>;
  /** the letter that is next */
  readonly letter: Accessor<string>;
  keep(): void;
  fit(): void;
  /** of the study that is shown */
  readonly fitted: Accessor<RecordingFitted | undefined>;
  write(form: RecordedForm): void;
}

const MOST_TITLE = 60;

export function makeRecordingActs(page: Page, state: RecordingState, engine: Recordings): RecordingActs {
  const { doc, shell } = page;
  const [work, setWork] = createSignal<RecordingProgress>();
  const [fault, setFault] = createSignal<string>();
  const [fitted, setFitted] = createSignal<RecordingFitted>();
  let call: { cancel(): void } | undefined;
  const cancel = (): void => {
    call?.cancel();
    call = undefined;
    setWork(undefined);
  };
  createEffect(
    on(state.result, () => {
      cancel();
      setFault(undefined);
      setFitted(undefined);
    }),
  );
  const bareName = (): string => (state.study()?.name ?? '').replace(/\.[^.]*$/, '').slice(0, MOST_TITLE);
  const follow = <T>(what: string, begin: () => JobCall<T>, then: (found: T) => void): void => {
    cancel();
    setFault(undefined);
    setWork({ done: 0, what });
    const next = begin();
    call = next;
    next.done.then(
      (found) => {
        if (call !== next) return;
        cancel();
        then(found);
      },
      (error: unknown) => {
        if (call !== next) return;
        cancel();
        setFault(wordRecordingFault(error, state.study()?.name ?? ''));
      },
    );
  };
  const report = (progress: RecordingProgress): void => void setWork(progress);
  const request = () => {
    const given = state.given();
    const athlete = doc.athlete();
    return given && athlete.kind === 'human' ? { ...given, athlete, options: state.options() } : undefined;
  };
  const letter = (): string => VERSION_LETTERS[Math.min(doc.versions().length, VERSION_LETTERS.length - 1)];
  const put = (name: string, file: RecordingFitted['file']): void =>
    putVersion(page, { name, file, isKept: false }, t.keepTitle, (put) => shell.notify({ text: t.kept(put) }));
  return {
    work,
    cancel,
    fault,
    letter,
    fitted,
    keep: () => {
      const asked = request();
      if (asked)
        follow(
          t.making,
          () => engine.skill({ ...asked, title: bareName() }, report),
          (file) => put(bareName(), file),
        );
    },
    fit: () => {
      const asked = request();
      if (!asked) return;
      const title = t.fittedTitle(bareName());
      follow(
        t.fitting,
        () => engine.fit({ ...asked, title }, report),
        (found) => {
          setFitted(found);
          put(title, found.file);
        },
      );
    },
    write: (form) => {
      const study = state.study();
      const given = state.given();
      if (!study || !given) return;
      follow(
        t.writing,
        () => engine.write({ form, study, bytes: given.bytes }, ({ done }) => report({ done, what: t.writing })),
        (text) => saveBlob(`${bareName()}.${form}`, new Blob([text], { type: 'text/plain' })),
      );
    },
  };
}
