/** A time that is typed, to a hundredth of a second. */
import { NumberField } from './number-field.tsx';

export function SecondsField(props: {
  label: string;
  value: number;
  min?: number;
  max?: number;
  compact?: boolean;
  onChange: (seconds: number) => void;
}) {
  return (
    <NumberField
      compact={props.compact}
      label={props.label}
      unit="s"
      value={props.value}
      min={props.min ?? -5}
      max={props.max ?? 20}
      step={0.01}
      decimals={2}
      onChange={props.onChange}
    />
  );
}
