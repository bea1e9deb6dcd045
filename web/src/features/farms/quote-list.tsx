import { useState } from 'react';
import type { FarmQuery } from '../../lib/graphql/generated/graphql.ts';
import { dollars } from '../../lib/units/format.ts';
import { DeleteItem } from './delete-item.tsx';
import { QuoteForm } from './quote-form.tsx';
import { UndoNotice } from '../../components/undo-notice.tsx';

type Farm = NonNullable<FarmQuery['farm']>;

/** The farm's quotes, newest first; the newest that names a house and retrofit is what its outlay is reckoned with. */
export function QuoteList({ farm }: { farm: Farm }) {
  const [editing, setEditing] = useState<string | null>(null);
  const [notice, setNotice] = useState<{ said: string; changeId: string } | null>(null);
  const houseName = new Map(farm.houses.map((h) => [h.id, h.name]));
  return (
    <section>
      <h2>Quotes</h2>
      <p className="caption">
        A firm quote narrows the outlay to about 7 %, a budget figure to 20 %, the catalogue to 30 % (common practice, no source). One that
        has run out is raised by 1 % a month, at most 20 %.
      </p>
      {notice && <UndoNotice {...notice} close={() => setNotice(null)} />}
      {farm.quotes.length === 0 && <p>No quote yet: outlays come from the catalogue.</p>}
      {farm.quotes.map((q) =>
        editing === q.id ? (
          <QuoteForm key={q.id} farm={farm} quote={q} close={() => setEditing(null)} />
        ) : (
          <div key={q.id}>
            <p>
              <b>
                {q.quotedOn}, {q.firmness.toLowerCase()}
                {q.supplier ? `, ${q.supplier}` : ''}
              </b>
              {q.validUntilOn ? `, valid until ${q.validUntilOn}` : ''}: {dollars(q.lines.reduce((s, l) => s + l.usd, 0))} for{' '}
              {[...new Set(q.lines.map((l) => `${l.retrofitCode} on ${houseName.get(l.houseId) ?? 'a deleted house'}`))].join('; ')}
            </p>
            <div className="acts">
              <button className="link" onClick={() => setEditing(q.id)}>
                change this quote
              </button>
              <DeleteItem
                id={q.id}
                revision={q.revision}
                name={`quote of ${q.quotedOn}`}
                done={(changeId) => setNotice({ said: `The quote of ${q.quotedOn} is deleted.`, changeId })}
              />
            </div>
          </div>
        ),
      )}
      {editing === 'new' ? (
        <QuoteForm farm={farm} close={() => setEditing(null)} />
      ) : (
        farm.houses.length > 0 && (
          <button className="link" onClick={() => setEditing('new')}>
            add a quote
          </button>
        )
      )}
    </section>
  );
}
