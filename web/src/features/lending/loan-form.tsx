import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { useEffect, useState } from 'react';
import { FaultList } from '../../components/forms/fault-list.tsx';
import { Choice, Field } from '../../components/forms/field.tsx';
import { HouseFinder } from '../../components/forms/house-finder.tsx';
import { useTyped } from '../../components/forms/typed.ts';
import { useUnsaved } from '../../components/forms/unsaved.tsx';
import { LeaveForm } from '../../components/forms/ways-out.tsx';
import { ask, requestId } from '../../lib/graphql/client.ts';
import { dollars, ofHundred } from '../../lib/units/format.ts';
import { LoanOptionsDocument, SaveLoanCaseDocument } from './lending-queries.ts';
import { payment, paymentKinds, perPayment, rateKinds, safeDollars, states } from './lending-words.ts';
import { SecurityFields } from './security-fields.tsx';
import { noSecurity, securityInput, type TypedSecurity } from './security.ts';
import { inputOf, usual, type Key, type Typed } from './loan-form-fields.ts';

interface Props {
  known?: { id: string; revision: number; typed: Typed; security: TypedSecurity };
  close: () => void;
  saved: (id: string) => void;
}

/** Waits until typing pauses. */
function usePaused<T>(value: T, ms = 350): T {
  const [paused, set] = useState(value);
  useEffect(() => {
    const timer = setTimeout(() => set(value), ms);
    return () => clearTimeout(timer);
  }, [value, ms]);
  return paused;
}

/** Terms of a loan, checked and answered as one types. */
export function LoanForm({ known, close, saved }: Props) {
  const { typed, set, changed } = useTyped<Typed>(() => known?.typed ?? usual);
  const { typed: security, set: setSecurity, changed: secures } = useTyped<TypedSecurity>(() => known?.security ?? noSecurity);
  const kept = useUnsaved(changed || secures);
  const queries = useQueryClient();
  const options = useQuery({
    queryKey: ['loan-options', typed.houseId],
    queryFn: () => ask(LoanOptionsDocument, { id: typed.houseId }),
    enabled: typed.houseId !== '',
  });
  const paused = usePaused(typed);
  const secured = usePaused(security);
  const ready = paused.houseId !== '' && paused.optionKey !== '' && paused.amountUsd !== '';
  const check = useQuery({
    queryKey: ['loan-check', paused, secured],
    queryFn: async () =>
      (await ask(SaveLoanCaseDocument, { input: { ...inputOf(paused, requestId(), known, true), ...securityInput(secured) } }))
        .saveLoanCase,
    enabled: ready,
    retry: false,
    placeholderData: (before) => before,
  });
  const save = useMutation({
    mutationFn: async () =>
      (await ask(SaveLoanCaseDocument, { input: { ...inputOf(typed, requestId(), known), ...securityInput(security) } })).saveLoanCase,
    onSuccess: async (d) => {
      if (d.changeId && d.caseId) {
        kept();
        await queries.invalidateQueries();
        saved(d.caseId);
      }
    },
  });
  const faults = (ready ? check.data?.faults : undefined) ?? [];
  const all = [...faults, ...(save.data?.faults ?? [])];
  const put = (key: Key) => (value: string) => {
    set((t) => ({ ...t, [key]: value }));
    save.reset();
  };
  const field = (key: Key, label: string, hint?: string) => (
    <Field label={label} value={typed[key]} change={put(key)} name={key} faults={faults} {...(hint ? { hint } : {})} />
  );
  const list = options.data?.house?.options.filter((o) => o.outlayUsd > 0) ?? [];
  const answer = ready && faults.length === 0 ? check.data?.answer : undefined;
  return (
    <form
      aria-label={known ? 'Change the terms' : 'A loan case'}
      onSubmit={(e) => {
        e.preventDefault();
        save.mutate();
      }}
    >
      <section>
        <h2>{known ? 'Change the terms' : 'A loan case'}</h2>
        <fieldset>
          <legend>What it pays for</legend>
          <div className="form">
            <HouseFinder
              label="house"
              value={typed.houseId}
              change={(houseId) => set({ ...typed, houseId, optionKey: '' })}
              name="houseId"
              faults={faults}
            />
            <Choice
              label="option"
              value={typed.optionKey}
              change={put('optionKey')}
              options={[['', 'choose an option'], ...list.map((o) => [o.key, `${o.title}, ${dollars(o.outlayUsd)}`] as const)]}
              name="optionKey"
              faults={faults}
            />
            {field('name', 'name of the case', 'empty: the option and the house')}
            <Choice label="where it stands" value={typed.state} change={put('state')} options={states} />
          </div>
        </fieldset>
        <fieldset>
          <legend>Money</legend>
          <div className="form">
            {field('amountUsd', 'amount lent, $')}
            {field('downPaymentUsd', 'down payment, $')}
            {field('grantUsd', 'grant, $')}
            {field('grantMonths', 'grant paid after, months from July')}
            {field('feeUsd', 'fees, a guarantor’s too, $')}
            <Choice
              label="the fees are"
              value={typed.feeInAmount}
              change={put('feeInAmount')}
              options={[
                ['yes', 'in the amount'],
                ['no', 'paid at the start'],
              ]}
            />
          </div>
        </fieldset>
        <fieldset>
          <legend>Rate and payments</legend>
          <div className="form">
            <Choice label="rate" value={typed.rateKind} change={put('rateKind')} options={rateKinds} />
            {typed.rateKind === 'FIXED' ? (
              field('ratePerYear', 'rate, % a year')
            ) : (
              <>
                {field('indexPerYear', 'index now, % a year')}
                {field('marginPerYear', 'margin, % a year')}
                {field('resetMonths', 'set anew every, months')}
              </>
            )}
            {field('termYears', 'term, years')}
            <Choice label="paid" value={typed.payments} change={put('payments')} options={paymentKinds} />
            {field('deferralMonths', 'principal deferred, months')}
            <Choice
              label="interest meanwhile"
              value={typed.deferredInterest}
              change={put('deferredInterest')}
              options={[
                ['PAID', 'is paid'],
                ['ADDED', 'is added to the balance'],
              ]}
            />
          </div>
        </fieldset>
        <fieldset>
          <legend>What the lender asks and holds</legend>
          <div className="form">
            {field('requiredProjectCover', 'project cover asked')}
            {field('requiredFarmCover', 'farm cover asked')}
            {field('operatingLineUsd', 'operating line, $')}
            {field('reserveUsd', 'reserve for the loan, $')}
            {field('guaranteeShare', 'guarantee, % of a loss')}
            {field('lossGivenDefault', 'lost at default, % of balance', 'the lender’s own figure')}
            <Choice
              label="margin of the farm’s sales"
              value={typed.drawsMargin}
              change={put('drawsMargin')}
              options={[
                ['yes', 'is drawn, half common to all farms'],
                ['no', 'is taken as certain'],
              ]}
            />
            {typed.drawsMargin === 'yes' && field('marginSd', 'its spread, % of a season')}
            {field('capacityGrowthPerYear', 'growth of income and living, % a year', 'empty: the study’s for wages')}
          </div>
        </fieldset>
        <SecurityFields
          typed={security}
          change={(s) => {
            setSecurity(s);
            save.reset();
          }}
          faults={faults}
        />
        {answer && (
          <p role="status">
            {payment(answer.paymentUsd)} {perPayment[typed.payments as keyof typeof perPayment]}. In{' '}
            <b>{ofHundred(answer.project.underOneShare)} of 100</b> futures the savings miss the payment in some season
            {answer.farm ? (
              <>
                , and the farm as a whole in <b>{ofHundred(answer.farm.underOneShare)}</b>
              </>
            ) : null}
            ; safe at 95 %: <b>{safeDollars(answer.largest.find((l) => l.confidence === 0.95)?.projectUsd)}</b>.
          </p>
        )}
        {ready &&
          check.data?.warnings.map((w) => (
            <p key={w.message} className="caution">
              <b>{w.message}</b> {w.remedy}
            </p>
          ))}
        {save.data?.conflict && (
          <p className="fault">Somebody changed this case meanwhile. What you typed is kept; close the form to see theirs.</p>
        )}
        <FaultList faults={all.filter((f) => !f.field || !(f.field in typed || f.field.includes('.')))} />
        {(check.error ?? save.error) && <p className="fault">{(save.error ?? check.error)?.message}</p>}
        <button
          className="filled"
          type="submit"
          disabled={save.isPending || faults.length > 0 || typed.houseId === '' || typed.optionKey === ''}
        >
          Save the case
        </button>{' '}
        <LeaveForm conflict={save.data?.conflict} close={close} />
      </section>
    </form>
  );
}
