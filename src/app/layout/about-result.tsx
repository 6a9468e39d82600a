/** What there is to know about the result besides the sentence: its name, what it was judged by, how sensitive it is, what it was compared with. */
import { onCleanup, onMount, Show } from 'solid-js';
import { useFlight } from '../page.ts';
import { resultTexts } from '../result-words.ts';
import { wordNames, wordNoName } from '../say/code-words.ts';
import { useSensitivity } from '../sensitivity.ts';
import { texts } from '../words.ts';
import { useCode } from './code-state.ts';
import { JudgedDetails } from './judged-details.tsx';
import { SensitiveParts } from './sensitive-parts.tsx';

const t = texts.head;

export function AboutResult(props: { close: () => void }) {
  const flight = useFlight();
  const code = useCode();
  const sensitivity = useSensitivity();
  const names = () => flight.result().names;
  // computed while somebody looks
  onMount(() => {
    const wasOpen = sensitivity.isOpen();
    if (!wasOpen) sensitivity.toggle();
    onCleanup(() => {
      if (!wasOpen && sensitivity.isOpen()) sensitivity.toggle();
    });
  });
  return (
    <div class="about-result">
      <h3>{t.aboutSkill}</h3>
      <p data-testid="code">
        <b>{wordNames(names())}</b>
      </p>
      <Show when={wordNoName(names())}>{(why) => <p class="quiet">{why()}</p>}</Show>
      <p class="sheet-actions">
        <button
          type="button"
          onClick={() => {
            props.close();
            code.open();
          }}
        >
          {t.draft}
        </button>
      </p>
      <h3>{resultTexts.judged.title}</h3>
      <JudgedDetails />
      <h3>{resultTexts.sensitive.open}</h3>
      <div class="sensitive">
        <SensitiveParts />
      </div>
      <p>{texts.comparedWhat}</p>
      <p class="standing">{texts.standingCaution}</p>
    </div>
  );
}
