import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { FaultList } from '../../components/forms/fault-list.tsx';
import { Field } from '../../components/forms/field.tsx';
import { useTyped } from '../../components/forms/typed.ts';
import { useUnsaved } from '../../components/forms/unsaved.tsx';
import { LeaveForm } from '../../components/forms/ways-out.tsx';
import { ask, requestId } from '../../lib/graphql/client.ts';
import { dollars, figure } from '../../lib/units/format.ts';
import type { LoanAnswer, LoanCase } from './lending-queries.ts';
import { SaveStatementDocument } from './lending-queries.ts';
import { SAVINGS_ONLY } from './lending-words.ts';
import { DeleteLoan } from './loan-actions.tsx';

type Farm = NonNullable<LoanCase['farm']>;
type Statement = Farm['statements'][number];

const lines = [
  ['netFarmIncomeUsd', 'net farm income', '+'],
  ['offFarmIncomeUsd', 'off-farm income', '+'],
  ['depreciationUsd', 'depreciation', '+'],
  ['termInterestUsd', 'interest on term debt', '+'],
  ['familyLivingUsd', 'family living', '−'],
  ['incomeTaxesUsd', 'income taxes', '−'],
  ['heatingUsd', 'heating, paid in the year', ''],
  ['termDebtServiceUsd', 'due on term debt, this loan not in it', ''],
] as const;

/** Capacity spelled out line by line, and the statements it is the mean of. */
export function Statements({
  farm,
  capacity,
  heatingUsd,
}: {
  farm: Farm;
  capacity: LoanAnswer['capacity'];
  heatingUsd: number | undefined;
}) {
  const [edited, setEdited] = useState<Statement | 'new'>();
  const years = farm.statements;
  return (
    <section>
      <h2>What {farm.name} has for term debt</h2>
      <p className="caption">
        Statements of up to three years, US dollars; shown to the farm and its lender only. Income and living before heating grow with the
        study’s wages to the season; heating is taken as it comes on each path.
      </p>
      {years.length === 0 ? (
        <p>No statements: {SAVINGS_ONLY.toLowerCase()}.</p>
      ) : (
        <div className="scroll" role="region" aria-label="statements, scrolls sideways" tabIndex={0}>
          <table>
            <thead>
              <tr>
                <th scope="col">line</th>
                {[...years].reverse().map((s) => (
                  <th key={s.id} scope="col" className="n">
                    {s.year}
                  </th>
                ))}
                <th scope="col" className="n">
                  enters as
                </th>
              </tr>
            </thead>
            <tbody>
              {lines.map(([key, what, sign]) => (
                <tr key={key}>
                  <td>
                    {sign} {what}
                  </td>
                  {[...years].reverse().map((s) => (
                    <td key={s.id} className="n">
                      {figure(s[key], 6)}
                    </td>
                  ))}
                  <td className="n">
                    {capacity &&
                      figure(
                        key === 'heatingUsd'
                          ? capacity.heatingUsd
                          : key === 'termDebtServiceUsd'
                            ? capacity.termDebtServiceUsd
                            : (capacity.lines.find((l) => l.what === what)?.usd ?? 0),
                        5,
                      )}
                  </td>
                </tr>
              ))}
              {capacity && (
                <tr className="total">
                  <td>capacity a year, mean of {capacity.years.join(', ')}</td>
                  {years.map((s) => (
                    <td key={s.id} />
                  ))}
                  <td className="n">{figure(capacity.usd, 5)}</td>
                </tr>
              )}
            </tbody>
          </table>
        </div>
      )}
      {capacity && heatingUsd !== undefined && (
        <p>
          Heating of the statements’ years {dollars(capacity.heatingUsd)}; the study reckons {dollars(heatingUsd)} for all its houses in the
          loan’s first season, as they stand.{' '}
          {capacity.years.length < capacity.yearsAsked && `${String(capacity.yearsAsked)} years are usually asked.`}
        </p>
      )}
      <div className="acts">
        {years.map((s) => (
          <span key={s.id}>
            <button className="link" onClick={() => setEdited(s)}>
              change {s.year}
            </button>{' '}
            <DeleteLoan id={s.id} revision={s.revision} name={`statement of ${String(s.year)}`} />
          </span>
        ))}
        <button className="link" onClick={() => setEdited('new')}>
          add a year’s statement
        </button>
      </div>
      {edited && (
        <StatementForm
          key={edited === 'new' ? 'new' : edited.id}
          farmId={farm.id}
          known={edited === 'new' ? undefined : edited}
          newest={years[0]?.year}
          close={() => setEdited(undefined)}
        />
      )}
    </section>
  );
}

const number = (text: string): number => (text.trim() === '' ? 0 : Number(text.replaceAll(',', '').replace('$', '')));

function StatementForm({
  farmId,
  known,
  newest,
  close,
}: {
  farmId: string;
  known: Statement | undefined;
  newest: number | undefined;
  close: () => void;
}) {
  const { typed, set, changed } = useTyped<Record<string, string>>(() => ({
    year: String(known?.year ?? (newest === undefined ? new Date().getFullYear() - 1 : newest - 1)),
    ...Object.fromEntries(lines.map(([key]) => [key, known ? String(known[key]) : ''])),
  }));
  const kept = useUnsaved(changed);
  const queries = useQueryClient();
  const save = useMutation({
    mutationFn: async () =>
      (
        await ask(SaveStatementDocument, {
          input: {
            id: known?.id ?? null,
            expectedRevision: known?.revision ?? null,
            requestId: requestId(),
            farmId,
            year: number(typed['year'] ?? ''),
            netFarmIncomeUsd: number(typed['netFarmIncomeUsd'] ?? ''),
            offFarmIncomeUsd: number(typed['offFarmIncomeUsd'] ?? ''),
            depreciationUsd: number(typed['depreciationUsd'] ?? ''),
            termInterestUsd: number(typed['termInterestUsd'] ?? ''),
            familyLivingUsd: number(typed['familyLivingUsd'] ?? ''),
            incomeTaxesUsd: number(typed['incomeTaxesUsd'] ?? ''),
            heatingUsd: number(typed['heatingUsd'] ?? ''),
            termDebtServiceUsd: number(typed['termDebtServiceUsd'] ?? ''),
          },
        })
      ).saveStatement,
    onSuccess: async (d) => {
      if (d.changeId) {
        kept();
        await queries.invalidateQueries();
        close();
      }
    },
  });
  const faults = save.data?.faults ?? [];
  const put = (key: string) => (value: string) => set({ ...typed, [key]: value });
  return (
    <form
      aria-label="A year's statement"
      onSubmit={(e) => {
        e.preventDefault();
        save.mutate();
      }}
    >
      <div className="form">
        <Field label="year" value={typed['year'] ?? ''} change={put('year')} name="year" faults={faults} />
        {lines.map(([key, what]) => (
          <Field key={key} label={`${what}, $`} value={typed[key] ?? ''} change={put(key)} name={key} faults={faults} />
        ))}
      </div>
      {save.data?.conflict && (
        <p className="fault">Somebody changed this statement meanwhile. What you typed is kept; close the form to see theirs.</p>
      )}
      <FaultList faults={faults.filter((f) => f.field !== 'year' && !lines.some(([key]) => key === f.field))} />
      {save.error && <p className="fault">{save.error.message}</p>}
      <button className="filled" type="submit" disabled={save.isPending}>
        Save the statement
      </button>{' '}
      <LeaveForm conflict={save.data?.conflict} close={close} />
    </form>
  );
}
