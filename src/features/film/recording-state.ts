/** The recording that is open: kept while the page is, on this machine alone. What cannot be read or changed leaves it as it was. */
import { type Accessor, batch, createMemo, createSignal } from 'solid-js';
import type { RecordingStudy, StudyOptions } from '../../../sim/index.ts';
import { pickFile } from '../../app/file-door.ts';
import { keptState, type Page } from '../../app/page.ts';
import { makePlayback, type Playback } from '../../app/playback.ts';
import { wordFileName } from '../../app/say/fault-words.ts';
import type { GivenRecording } from '../../engine/recording.ts';
import type { RecordingProgress, RecordingResult } from '../../jobs/kinds/recording-data.ts';
import { wordRecordingFault } from './recording-fault.ts';
import { firstOptions } from './recording-options.ts';
import { recordingTexts as t } from './recording-words.ts';

const ACCEPT = '.bvh,.trc,.c3d,.csv,.tsv,.txt';
/** bytes; more is not read into memory: sim says the same of what it is handed */
const LARGEST = 256_000_000;
/** the angle that is shown first, where it was seen */
const FIRST_ANGLE = 'shoulderElevationR';

export interface RecordingState {
  readonly result: Accessor<RecordingResult | undefined>;
  readonly study: Accessor<RecordingStudy | undefined>;
  /** what it was studied with; while another study is under way, what that is asked with */
  readonly options: Accessor<StudyOptions>;
  /** under way */
  readonly work: Accessor<(RecordingProgress & { readonly name: string }) | undefined>;
  /** why the last file or change came to nothing */
  readonly fault: Accessor<string | undefined>;
  /** the fault has been read */
  dismiss(): void;
  pick(): void;
  read(file: File): void;
  change(options: StudyOptions): void;
  cancel(): void;
  readonly given: Accessor<GivenRecording | undefined>;
  /** index into the angles of the study */
  readonly angle: Accessor<number>;
  setAngle(index: number): void;
  nextAngle(): void;
  /** s from the start of the span */
  readonly cursor: Accessor<number>;
  setCursor(s: number): void;
  readonly play: Playback;
}

function makeRecordingState({ doc, services }: Page): RecordingState {
  const [given, setGiven] = createSignal<GivenRecording>();
  const [result, setResult] = createSignal<RecordingResult>();
  const [options, setOptions] = createSignal<StudyOptions>(firstOptions);
  const [work, setWork] = createSignal<RecordingProgress & { readonly name: string }>();
  const [fault, setFault] = createSignal<string>();
  const [angle, setAngle] = createSignal(0);
  const [at, setAt] = createSignal(0);
  let stop: (() => void) | undefined;
  const study = createMemo(() => result()?.study);
  const end = (): number => study()?.t.at(-1) ?? 0;
  const setCursor = (s: number): void => {
    setAt(Math.min(Math.max(s, 0), end()));
  };
  const cancel = (): void => {
    stop?.();
    stop = undefined;
    setWork(undefined);
  };
  const firstAngle = ({ angleNames, isSeen }: RecordingStudy): number => {
    const usual = angleNames.indexOf(FIRST_ANGLE);
    return isSeen[usual] ? usual : Math.max(isSeen.indexOf(true), 0);
  };
  /** `before`: what the options go back to where it comes to nothing */
  const run = async (next: GivenRecording, wanted: StudyOptions, before: StudyOptions): Promise<void> => {
    cancel();
    const isNew = next !== given();
    let isOn = true;
    const undo = (): void => void setOptions(before);
    stop = () => {
      isOn = false;
      undo();
    };
    batch(() => {
      setFault(undefined);
      setWork({ done: 0, what: t.opening, name: next.name });
      setOptions(wanted);
    });
    try {
      const { engine } = await services.load.recording();
      const athlete = doc.athlete();
      if (athlete.kind !== 'human') throw new Error(t.notHuman);
      if (!isOn) return;
      const call = engine.study({ ...next, athlete, options: wanted }, (progress) => {
        if (isOn) setWork({ ...progress, name: next.name });
      });
      stop = () => {
        isOn = false;
        call.cancel();
        undo();
      };
      const found = await call.done;
      if (!isOn) return;
      stop = undefined;
      batch(() => {
        setWork(undefined);
        setGiven(next);
        setResult(found);
        if (isNew || angle() >= found.study.angleNames.length) setAngle(firstAngle(found.study));
        setCursor(isNew ? end() / 2 : at());
      });
    } catch (error) {
      if (!isOn) return;
      stop = undefined;
      batch(() => {
        setWork(undefined);
        undo();
        setFault(wordRecordingFault(error, next.name));
      });
    }
  };
  const read = async (file: File): Promise<void> => {
    if (file.size > LARGEST) {
      setFault(t.tooLarge(wordFileName(file.name)));
      return;
    }
    try {
      await run({ name: file.name, bytes: new Uint8Array(await file.arrayBuffer()) }, firstOptions, options());
    } catch {
      setFault(t.cannotRead(wordFileName(file.name)));
    }
  };
  const play = makePlayback(at, setCursor, { from: () => 0, to: end });
  return {
    given,
    result,
    study,
    options,
    work,
    fault,
    dismiss: () => void setFault(undefined),
    pick: () => pickFile((file) => void read(file), ACCEPT),
    read: (file) => void read(file),
    change: (wanted) => {
      const now = given();
      if (now) void run(now, wanted, options());
    },
    cancel,
    angle,
    setAngle,
    nextAngle: () => {
      const { isSeen } = study() ?? { isSeen: [] };
      for (let k = 1; k <= isSeen.length; k++) {
        const next = (angle() + k) % isSeen.length;
        if (!isSeen[next]) continue;
        setAngle(next);
        return;
      }
    },
    cursor: at,
    setCursor,
    play,
  };
}

export const useRecordingState = keptState(makeRecordingState);
