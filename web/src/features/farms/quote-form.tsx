import { Choice, Field } from '../../components/forms/field.tsx';
import { useTyped } from '../../components/forms/typed.ts';
import { ask, requestId } from '../../lib/graphql/client.ts';
import type { FarmQuery, SaveQuoteInput } from '../../lib/graphql/generated/graphql.ts';
import { SaveQuote } from './farm-queries.ts';
import { FormFrame } from './form-frame.tsx';
import { retrofits } from './house-words.ts';
import { typedNumber, useSave } from './save-hook.ts';

type Farm = NonNullable<FarmQuery['farm']>;
type Quote = Farm['quotes'][number];

const categories = ['material', 'labour', 'freight', 'electrical', 'permits', 'removal', 'visit'].map((c) => [c, c] as const);
/** A supplier's quote by lines: house, retrofit, sum, what it is for, whether a grant may count it. */
export function QuoteForm({ farm, quote, close }: { farm: Farm; quote?: Quote; close: () => void }) {
  const blank = { house: farm.houses[0]?.id ?? '', code: 'curtain', usd: '', category: 'material', eligible: true };
  const { typed, set, changed } = useTyped(() => ({
    head: {
      supplier: quote?.supplier ?? '',
      on: quote?.quotedOn ?? '',
      until: quote?.validUntilOn ?? '',
      firmness: quote?.firmness ?? 'FIRM',
    },
    lines: quote?.lines.map((l) => ({
      house: l.houseId,
      code: l.retrofitCode,
      usd: String(l.usd),
      category: l.category,
      eligible: l.eligible,
    })) ?? [blank],
  }));
  const { head, lines } = typed;
  const setHead = (next: typeof head) => set({ ...typed, head: next });
  const setLines = (next: typeof lines) => set({ ...typed, lines: next });
  const save = useSave(
    async () => {
      const input: SaveQuoteInput = {
        id: quote?.id ?? null,
        expectedRevision: quote?.revision ?? null,
        requestId: requestId(),
        farmId: farm.id,
        supplier: head.supplier || null,
        quotedOn: head.on || new Date().toISOString().slice(0, 10),
        validUntilOn: head.until || null,
        firmness: head.firmness as SaveQuoteInput['firmness'],
        lines: lines.map((l) => ({
          houseId: l.house,
          retrofitCode: l.code,
          usd: typedNumber(l.usd) ?? 0,
          category: l.category,
          eligible: l.eligible,
        })),
      };
      return (await ask(SaveQuote, { input })).saveQuote;
    },
    close,
    changed,
  );
  const faults = save.data?.faults ?? [];
  const change = (at: number, part: Partial<(typeof lines)[number]>) => setLines(lines.map((l, i) => (i === at ? { ...l, ...part } : l)));
  return (
    <FormFrame
      title={quote ? 'Change the quote' : 'Add a quote'}
      button="Save the quote"
      faults={faults}
      shown={['validUntilOn']}
      conflict={save.data?.conflict ?? false}
      error={save.error}
      pending={save.isPending}
      submit={() => save.mutate()}
      close={close}
    >
      <Field label="who quotes" value={head.supplier} change={(v) => setHead({ ...head, supplier: v })} name="supplier" faults={faults} />
      <Field
        label="date (empty: today)"
        value={head.on}
        change={(v) => setHead({ ...head, on: v })}
        name="quotedOn"
        faults={faults}
        type="date"
      />
      <Field
        label="valid until"
        value={head.until}
        change={(v) => setHead({ ...head, until: v })}
        name="validUntilOn"
        faults={faults}
        type="date"
      />
      <Choice
        label="how firm"
        value={head.firmness}
        change={(v) => setHead({ ...head, firmness: v as typeof head.firmness })}
        options={[
          ['FIRM', 'firm'],
          ['BUDGET', 'budget figure'],
          ['CATALOGUE', 'from a catalogue'],
        ]}
      />
      {lines.map((l, i) => (
        <fieldset key={i} className="form" style={{ gridColumn: '1 / -1' }}>
          <legend>line {i + 1}</legend>
          <Choice
            label="house"
            value={l.house}
            change={(v) => change(i, { house: v })}
            options={farm.houses.map((h) => [h.id, h.name] as const)}
          />
          <Choice label="retrofit" value={l.code} change={(v) => change(i, { code: v })} options={retrofits} />
          <Field
            label="sum, $"
            value={l.usd}
            change={(v) => change(i, { usd: v })}
            name=""
            faults={[]}
            number={{ least: 0, grouped: true, such: '4200' }}
            required
          />
          <Choice label="for" value={l.category} change={(v) => change(i, { category: v })} options={categories} />
          <label>
            <input
              type="checkbox"
              style={{ minHeight: 0 }}
              checked={l.eligible}
              onChange={(e) => change(i, { eligible: e.target.checked })}
            />{' '}
            a grant may count it
          </label>
          {lines.length > 1 && (
            <button className="link" type="button" onClick={() => setLines(lines.filter((_, k) => k !== i))}>
              take line {i + 1} out
            </button>
          )}
        </fieldset>
      ))}
      <button className="link" type="button" onClick={() => setLines([...lines, { ...(lines.at(-1) ?? blank), usd: '' }])}>
        another line
      </button>
    </FormFrame>
  );
}
