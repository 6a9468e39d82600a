/** Where this bench is found, for links and codes. */
import { createSignal, createUniqueId, Show } from 'solid-js';
import { ownAddress, pageAddress, setOwnAddress, tidyAddress } from './base-address.ts';
import { linkTexts } from './link-words.ts';

const t = linkTexts.address;

export function AddressField() {
  const id = createUniqueId();
  const [isWrong, setWrong] = createSignal(false);
  const put = (field: HTMLInputElement): void => {
    const typed = field.value.trim();
    const address = tidyAddress(typed);
    setWrong(typed !== '' && address === undefined);
    if (isWrong()) return;
    setOwnAddress(address);
    field.value = address ?? '';
  };
  return (
    <div class="address-field">
      <label for={id}>{t.title}</label>
      <input
        id={id}
        type="url"
        inputmode="url"
        maxLength={2000}
        autocomplete="off"
        spellcheck={false}
        aria-describedby={`${id}-hint`}
        aria-invalid={isWrong()}
        placeholder={pageAddress(location.href) ?? t.none}
        value={ownAddress() ?? ''}
        onChange={(e) => put(e.currentTarget)}
        onKeyDown={(e) => {
          if (e.key === 'Enter') put(e.currentTarget);
        }}
      />
      <p class="quiet" id={`${id}-hint`}>
        {t.hint}
      </p>
      <Show when={isWrong()}>
        <p role="alert">{t.wrong}</p>
      </Show>
    </div>
  );
}
