/** The box beside the sentence: something to try, done at a press; then what came of it, and the way back. */
import { type JSX, Match, Show, Switch } from 'solid-js';
import { type SaidTry, useTry } from './try-state.ts';
import { tryTexts as t } from './words.ts';
import './try.css';

export function TryBox() {
  const state = useTry();
  return (
    <Switch>
      <Match when={state.done()}>
        {(done) => (
          <Box lead={t.done} said={done()} isDone>
            <button type="button" onClick={() => state.putBack()}>
              {t.undo}
            </button>
          </Box>
        )}
      </Match>
      <Match when={state.offer()}>
        {(offer) => (
          <Box lead={t.lead} said={offer()}>
            <button type="button" class="do-it" onClick={() => state.doIt()}>
              {t.doIt}
            </button>
          </Box>
        )}
      </Match>
    </Switch>
  );
}

function Box(props: { lead: string; said: SaidTry; isDone?: boolean; children: JSX.Element }) {
  return (
    <section class="try-box" aria-label={t.label}>
      <p role="status">
        <b>{props.lead}</b> {props.isDone ? props.said.said : props.said.cue}
        <span class="try-comes">
          <span class={props.said.of === 'twists' ? 'twist' : 'som'}>
            <Show when={!props.isDone}>
              {props.said.before} {t.to}{' '}
            </Show>
            <b>{props.said.after}</b> {props.said.unit}
          </span>
          <Show when={props.said.ending}>, {props.said.ending}</Show>
        </span>
      </p>
      {props.children}
    </section>
  );
}
