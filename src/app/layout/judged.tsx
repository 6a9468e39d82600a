/** Under the sentence: how often the landing ends so over the stated ranges; a press opens what was judged and what was not. */
import { createSignal, For, Show } from 'solid-js';
import { wordBasis } from '../../../sim/words/basis-words.ts';
import { upper } from '../../../sim/words/verdict-words.ts';
import { CutText } from '../../ui/cut-text.tsx';
import { formatNumber } from '../../ui/numbers.ts';
import { Sheet } from '../../ui/sheet.tsx';
import { sayLikelihood } from '../say/say-likelihood.ts';
import { PAGE_NUMBERS } from '../say/sentence-words.ts';
import { useWholeState } from '../whole-state.ts';
import { texts } from '../words.ts';

const t = texts.judged;

export function Judged() {
  const whole = useWholeState();
  const [isOpen, setOpen] = createSignal(false);
  const likely = (): string => sayLikelihood(whole);
  return (
    <>
      <button type="button" class="judged" onClick={() => setOpen(true)}>
        <CutText text={upper(likely()) || t.open} />
      </button>
      <Show when={isOpen()}>
        <Sheet title={t.title} onClose={() => setOpen(false)}>
          <p>{wordBasis(whole.verdict(), PAGE_NUMBERS)}</p>
          <Show when={whole.likelihood()}>
            {(found) => (
              <>
                <p>
                  <b>{likely()}</b> {t.samples(String(found().samples))}
                </p>
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
              </>
            )}
          </Show>
          <For each={t.limits}>{(line) => <p>{line}</p>}</For>
          <p>{texts.compared}</p>
          <p>{texts.standingCaution}</p>
        </Sheet>
      </Show>
    </>
  );
}
