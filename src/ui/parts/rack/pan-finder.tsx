// What finds a pan among many: words, a section, an order; and the way to several pans at once. Loads after the pans.
import { rackOrders } from '../../../domain/rack/rack-order';
import type { RackModel } from '../../../state/rack/rack-model';
import { addressOf } from '../../frame/route';
import { familyTitle } from '../../words/family-words';
import { finderWords } from '../../words/finder-words';

export function PanFinder({
  rack,
}: {
  readonly rack: Pick<RackModel, 'search' | 'order' | 'section' | 'onRack'>;
}) {
  const families = [...new Set(rack.onRack.value.map(({ family }) => family))].sort();
  return (
    <div class="pair finder">
      <label class="field">
        <span>{finderWords.search}</span>
        <input
          type="search"
          autocomplete="off"
          value={rack.search.value}
          onInput={(event) => {
            rack.search.value = event.currentTarget.value;
          }}
        />
      </label>
      <label class="field">
        <span>{finderWords.sortBy}</span>
        <select
          value={rack.order.value}
          onChange={(event) => {
            const { value } = event.currentTarget;
            rack.order.value = rackOrders.find((each) => each === value) ?? 'need';
          }}
        >
          {rackOrders.map((order) => (
            <option key={order} value={order}>
              {finderWords.orders[order]}
            </option>
          ))}
        </select>
      </label>
      {families.length > 1 && (
        <label class="field">
          <span>{finderWords.section}</span>
          <select
            value={rack.section.value ?? ''}
            onChange={(event) => {
              const { value } = event.currentTarget;
              rack.section.value = families.find((each) => each === value) ?? null;
            }}
          >
            <option value="">{finderWords.allSections}</option>
            {families.map((family) => (
              <option key={family} value={family}>
                {familyTitle(family)}
              </option>
            ))}
          </select>
        </label>
      )}
      <a class="button" href={addressOf('several')}>
        {finderWords.several}
      </a>
    </div>
  );
}
