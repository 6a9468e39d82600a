/** What a line shows while it is not edited: its formula set as mathematics, its name, or its words. */
import { Match, Switch } from 'solid-js';
import { Mathematics } from '../../app/mathematics.tsx';
import type { SheetRow } from '../../engine/estimate.ts';
import { estimateTexts as e } from './words.ts';

/** The name alone of a known line: "r" with "arm" below. */
function Name(props: { name: string }) {
  const parts = (): readonly string[] => props.name.split('_').filter((part) => part !== '');
  return (
    <span class="line-name">
      {parts()[0] ?? props.name}
      <sub>{parts().slice(1).join(' ')}</sub>
    </span>
  );
}

export function LineFace(props: { text: string; row: SheetRow | undefined; isKnown: boolean }) {
  const result = () => props.row?.result;
  const quantity = () => {
    const found = result();
    return found?.kind === 'quantity' ? found : undefined;
  };
  /** before the piece with the fault, the piece, and after it */
  const pieces = (): readonly [string, string, string] => {
    const found = result();
    const part = found?.kind === 'fault' ? found.part : undefined;
    const at = part === undefined ? -1 : props.text.lastIndexOf(part);
    if (part === undefined || at < 0) return [props.text, '', ''];
    return [props.text.slice(0, at), part, props.text.slice(at + part.length)];
  };
  return (
    <span class="line-face">
      <Switch
        fallback={
          <span class="face-text">
            {pieces()[0]}
            <b>{pieces()[1]}</b>
            {pieces()[2]}
          </span>
        }
      >
        <Match when={props.isKnown && quantity()}>{(q) => <Name name={q().name} />}</Match>
        <Match when={quantity() && props.row?.formula}>
          {(formula) => <Mathematics formula={formula()} label={e.formulaOf(quantity()?.name ?? '')} />}
        </Match>
        <Match
          when={
            result()?.kind === 'drawing' && (result() as { kind: 'drawing' } & NonNullable<ReturnType<typeof result>>)
          }
        >
          {(drawn) => {
            const body = () => (drawn() as Extract<SheetRow['result'], { kind: 'drawing' }>).body;
            const of = () => (drawn() as Extract<SheetRow['result'], { kind: 'drawing' }>).of;
            return (
              <span class="face-text">
                <b>{e.bodySize(body().kind, props.row?.size ?? '')}</b> {e.bodyFor(of())}
              </span>
            );
          }}
        </Match>
        <Match when={/^\s*#/.test(props.text)}>
          <span class="face-text">{props.text.replace(/^\s*#\s*/, '')}</span>
        </Match>
      </Switch>
    </span>
  );
}
