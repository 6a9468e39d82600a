/** A value that is dragged on a line or typed: the result follows the hand. */
import { createUniqueId, For } from 'solid-js';
import type { SkillFile } from '../../../sim/index.ts';
import { useDocument, useFlight } from '../../app/page.ts';
import { NumberField } from '../../ui/number-field.tsx';
import type { RowScale } from './scales.ts';
import { contactTexts } from './words.ts';

interface KnobProps {
  label: string;
  value: number;
  scale: RowScale;
  set: (file: SkillFile, value: number) => SkillFile;
}

export function Knob(props: KnobProps) {
  const doc = useDocument();
  const flight = useFlight();
  const title = (): string => contactTexts.changed(props.label);
  const draft = (v: number): void => {
    const from = doc.begin();
    doc.draft(props.set(from, v));
  };
  return (
    <div class="knob">
      <NumberField
        label={props.label}
        {...props.scale}
        value={props.value}
        onChange={(v) => doc.edit(props.set(doc.file(), v), title())}
        onDraft={draft}
        onSettle={() => doc.settle(title())}
        onAbandon={() => doc.abandon()}
      />
      <input
        type="range"
        aria-label={props.label}
        min={props.scale.min}
        max={props.scale.max}
        step={props.scale.step}
        value={props.value}
        onInput={(e) => draft(e.currentTarget.valueAsNumber)}
        onChange={() => doc.settle(title())}
        onKeyDown={(e) => {
          if (e.key !== 'Escape' || !flight.before()) return;
          e.stopPropagation();
          doc.abandon();
        }}
      />
    </div>
  );
}

export function Pick(props: {
  label: string;
  value: string;
  names: readonly string[];
  words: Readonly<Record<string, string>>;
  choose: (value: string) => void;
}) {
  const id = createUniqueId();
  return (
    <div class="pick">
      <label for={id}>{props.label}</label>
      <select id={id} value={props.value} onChange={(e) => props.choose(e.currentTarget.value)}>
        <For each={props.names}>{(name) => <option value={name}>{props.words[name] ?? name}</option>}</For>
      </select>
    </div>
  );
}
