/** From when to when a shape is held, typed. */
import { SecondsField } from '../ui/seconds-field.tsx';
import { texts } from './words.ts';

const t = texts.shapes;

export function SpanFields(props: {
  from: number;
  to: number;
  change: (edge: 'from' | 'to', seconds: number) => void;
}) {
  return (
    <>
      <SecondsField label={t.from} value={props.from} onChange={(s) => props.change('from', s)} />
      <SecondsField label={t.to} value={props.to} onChange={(s) => props.change('to', s)} />
    </>
  );
}
