import { useQuery } from '@tanstack/react-query';
import { Link, useSearchParams } from 'react-router';
import { ask } from '../../lib/graphql/client.ts';
import type { LoanBookQuery } from '../../lib/graphql/generated/graphql.ts';
import { counted, dollars, figure, ofHundred } from '../../lib/units/format.ts';
import { BookLosses } from './book-losses.tsx';
import { BookShares } from './book-shares.tsx';
import { BookStressDocument, LoanBookDocument, type Book } from './book-queries.ts';
import { stateWords } from './lending-words.ts';
import { NumberHead } from '../../components/number-head.tsx';

type Listed = LoanBookQuery['coop']['loanCases'];

export function BookPage() {
  const [search, setSearch] = useSearchParams();
  const chosen = search.get('cases')?.split('.').filter(Boolean);
  const ids = chosen ?? null;
  const { data, error } = useQuery({
    queryKey: ['loan-book', ids],
    queryFn: () => ask(LoanBookDocument, { ids }),
    placeholderData: (before) => before,
  });
  const stress = useQuery({
    queryKey: ['loan-book-stress', ids],
    queryFn: () => ask(BookStressDocument, { ids }),
    enabled: !!data?.loanBook,
  });
  if (error) return <p className="fault">{error.message}</p>;
  if (!data) return <p className="quiet">Laying the loans over the same futures.</p>;
  const book = data.loanBook;
  const listed = data.coop.loanCases;
  const inBook = new Set(chosen ?? listed.filter((c) => c.terms.state !== 'DECLINED').map((c) => c.id));
  const choose = (id: string, on: boolean) => {
    const next = listed.map((c) => c.id).filter((c) => (c === id ? on : inBook.has(c)));
    setSearch({ cases: next.join('.') }, { replace: true });
  };
  const cheap = stress.data?.cheap;
  return (
    <>
      {book ? (
        <h1>
          {cheap ? (
            <>
              If fuel falls by 40 % through the two warmest winters,{' '}
              <b>
                {Math.round(cheap.missTogetherMiddle)} of {book.cases.length}
              </b>{' '}
              cases miss their payment from savings together; one future in a hundred loses <b>{dollars(cheap.p99Usd)}</b>, and{' '}
            </>
          ) : (
            'One future in a hundred loses '
          )}
          <b>{dollars(book.drawn.p99Usd)}</b> {cheap ? 'as the futures are drawn' : 'or more'}.
        </h1>
      ) : (
        <h1>No case of this book has an answer yet.</h1>
      )}
      {book && (
        <p className="lead">
          {counted(book.cases.length, 'case')} of <b>{dollars(book.amountUsd)}</b>: the mean loss is <b>{dollars(book.drawn.meanUsd)}</b>,
          one future in twenty loses over <b>{dollars(book.drawn.p95Usd)}</b> (give or take {dollars(book.drawn.p95HalfWidth, 2)}), one in a
          hundred over <b>{dollars(book.drawn.p99Usd)}</b> (give or take {dollars(book.drawn.p99HalfWidth, 2)}). Without a loss:{' '}
          {ofHundred(book.drawn.noLossShare)} of 100.
        </p>
      )}
      <p className="caution">
        <b>Modelled, not a credit score.</b> Losses are after guarantees, at each lender’s own flat share of the balance, not discounted;
        cases without statements are judged on their savings alone.
      </p>
      <p>
        <Link to="/loans">all loans</Link>
      </p>
      {book && (
        <>
          <div className="two even">
            <BookLosses book={book} />
            <Stressed book={book} stress={stress.data ?? undefined} error={stress.error} />
          </div>
          <BookShares book={book} />
        </>
      )}
      <Members listed={listed} book={book ?? undefined} inBook={inBook} choose={choose} />
    </>
  );
}

type Stress = { cheap?: Book['drawn'] | null; dear?: Book['drawn'] | null };

function Stressed({ book, stress, error }: { book: Book; stress: Stress | undefined; error: Error | null }) {
  const rows: [string, string, Book['drawn'] | null | undefined][] = [
    ['As drawn', 'nothing goes wrong but what the futures hold', book.drawn],
    ['Fuel 40 % cheaper, two warmest winters', 'little is saved, everywhere at once', stress?.cheap],
    ['Fuel twice as dear, two coldest winters', 'every farm’s bill is highest at once', stress?.dear],
  ];
  return (
    <section>
      <h2>When fuel goes wrong everywhere at once</h2>
      <p className="caption">
        Missing together: cases whose savings miss the payment in one and the same season, the worst season of the middle future.
      </p>
      {error && <p className="fault">{error.message}</p>}
      <table className="stack">
        <thead>
          <tr>
            <th scope="col">stress</th>
            <NumberHead over="missing" under="together" />
            <NumberHead over="mean" under="loss, $" />
            <NumberHead over="one in 20" under="over, $" />
            <NumberHead over="one in 100" under="over, $" />
          </tr>
        </thead>
        <tbody>
          {rows.map(([name, note, losses]) => (
            <tr key={name}>
              <td>
                {name}
                <span className="second">{note}</span>
              </td>
              {losses ? (
                <>
                  <td className="n" data-name="missing together">
                    {Math.round(losses.missTogetherMiddle)}
                  </td>
                  <td className="n" data-name="mean loss, $">
                    {figure(losses.meanUsd)}
                  </td>
                  <td className="n" data-name="one in 20 over, $">
                    {figure(losses.p95Usd)}
                  </td>
                  <td className="n" data-name="one in 100 over, $">
                    {figure(losses.p99Usd)}
                  </td>
                </>
              ) : (
                <td colSpan={4} className="quiet">
                  being drawn
                </td>
              )}
            </tr>
          ))}
        </tbody>
      </table>
      <p className="small quiet">
        The cases’ own worst hundredths added up would say {dollars(book.addedP99Usd)}: more than the book’s {dollars(book.drawn.p99Usd)},
        for not all fall on one path. Read from the sum, path by path.
      </p>
    </section>
  );
}

function Members({
  listed,
  book,
  inBook,
  choose,
}: {
  listed: Listed;
  book: Book | undefined;
  inBook: ReadonlySet<string>;
  choose: (id: string, on: boolean) => void;
}) {
  const found = new Map(book?.cases.map((c) => [c.loanCase.id, c]) ?? []);
  const left = new Map(book?.leftOut.map((l) => [l.caseId, l]) ?? []);
  return (
    <section>
      <h2>Cases in this book</h2>
      <p className="caption">The address keeps what is chosen.</p>
      <table className="stack">
        <thead>
          <tr>
            <th scope="col">case</th>
            <NumberHead over="amount" under="$" />
            <NumberHead over="default," under="of 100" />
            <NumberHead over="expected" under="loss, $" />
          </tr>
        </thead>
        <tbody>
          {listed.map((c) => {
            const mine = found.get(c.id);
            return (
              <tr key={c.id}>
                <td>
                  <label className="choice">
                    <input type="checkbox" checked={inBook.has(c.id)} onChange={(e) => choose(c.id, e.target.checked)} />{' '}
                    {c.farm?.name ?? 'a farm no longer there'}, {c.name}
                  </label>
                  <span className="second">
                    {stateWords(c.terms.state)}
                    {left.has(c.id) && `: ${left.get(c.id)?.message ?? ''} ${left.get(c.id)?.remedy ?? ''}`}
                  </span>
                </td>
                <td className="n chief">
                  <Link to={`/loans/${c.id}`}>{figure(c.terms.amountUsd)}</Link>
                </td>
                <td className="n" data-name="default, of 100">
                  {mine ? ofHundred(mine.defaultShare) : ''}
                </td>
                <td className="n" data-name="expected loss, $">
                  {mine ? figure(mine.expectedUsd, 2) : ''}
                </td>
              </tr>
            );
          })}
          {book && (
            <tr className="total">
              <td>the book</td>
              <td className="n chief">{figure(book.amountUsd, 4)}</td>
              <td />
              <td className="n" data-name="expected loss, $">
                {figure(book.drawn.meanUsd)}
              </td>
            </tr>
          )}
        </tbody>
      </table>
    </section>
  );
}
