/** The caution that never goes: its first sentence always, the whole of it in place at a press. */
import { createSignal, type JSX, Show } from 'solid-js';
import { texts } from '../words.ts';
import { touchTexts as t } from './touch-words.ts';

export function StandingLine(props: { height?: number; children?: JSX.Element }) {
  const [isWhole, setWhole] = createSignal(false);
  return (
    <footer class="standing-line" style={props.height === undefined ? {} : { '--standing': `${props.height}px` }}>
      <p class="standing">
        <Show when={isWhole()} fallback={texts.standingCautionShort}>
          {texts.standingCaution}
        </Show>{' '}
        <button type="button" class="link" aria-expanded={isWhole()} onClick={() => setWhole(!isWhole())}>
          {isWhole() ? t.less : t.more}
        </button>
      </p>
      {props.children}
    </footer>
  );
}
