/** What the ending was judged by, over which ranges, and what is not judged. */
import { For, Show } from 'solid-js';
import { wordBasis } from '../../../sim/words/basis-words.ts';
import { formatNumber } from '../../ui/numbers.ts';
import { resultTexts } from '../result-words.ts';
import { sayLikelihood } from '../say/say-likelihood.ts';
import { PAGE_NUMBERS } from '../say/sentence-words.ts';
import { useWholeState } from '../whole-state.ts';

const t = resultTexts.judged;

export function JudgedDetails() {
  const whole = useWholeState();
  return (
    <>
      <p>{wordBasis(whole.verdict(), PAGE_NUMBERS)}</p>
      <Show when={whole.likelihood()}>
        {(found) => (
          <>
            <p>
              <b>{sayLikelihood(whole)}</b> {t.samples(String(found().samples))}
            </p>
            <details>
              <summary>{t.sources}</summary>
              <table class="ranges">
                <thead>
                  <tr>
                    <th scope="col">{t.varied}</th>
                    <th scope="col">{t.from}</th>
                    <th scope="col">{t.to}</th>
                    <th scope="col">{t.source}</th>
                  </tr>
                </thead>
                <tbody>
                  <For each={found().ranges}>
                    {(range) => (
                      <tr>
                        <th scope="row">{t.names[range.name]}</th>
                        <td>{formatNumber(range.low, 2)}</td>
                        <td>{formatNumber(range.high, 2)}</td>
                        <td>{range.source}</td>
                      </tr>
                    )}
                  </For>
                </tbody>
              </table>
            </details>
          </>
        )}
      </Show>
      <details>
        <summary>{t.limitsTitle}</summary>
        <For each={t.limits}>{(line) => <p>{line}</p>}</For>
      </details>
    </>
  );
}
