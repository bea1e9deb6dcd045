import { useUnits } from '../../lib/units/units-context.tsx';
import type { SheetAward } from './grower-points.tsx';
import { Point } from '../../components/sheet-point.tsx';
import type { SheetOption } from './sheet-query.ts';

interface Props {
  option: SheetOption | undefined;
  award: SheetAward | undefined;
  coop: string;
}

const USUAL_OBLIGATION_YEARS = 5;

/** What the grower promises, the dangers of the work, and whom to ring. */
export function GrowerWarnings({ option, award, coop }: Props) {
  const { say } = useUnits();
  return (
    <>
      <Point no={13} name="What you promise if you take a grant">
        To keep the work in use and in repair, to let it be seen, to hand in the fuel bills, and to pay back for the months left if it goes
        within {award?.obligationYears ?? USUAL_OBLIGATION_YEARS} years of payment. Do not begin before the grant is accepted.
      </Point>
      <Point no={14} name="Dangers">
        <b>Carbon monoxide:</b> a tighter house with a burner inside needs ducted air, a sound flue and an alarm. <b>Wiring</b> by a
        licensed electrician, off the wet. <b>Pumps and wet floors:</b> ground-fault protection, dry walkways. <b>Snow:</b> under a curtain
        or foam that stays shut nothing melts; the load can bring the house down, so say who opens it and when. <b>Borrowing:</b> the
        payment is sure, the saving is not. Local codes and licensed trades go before this sheet.
        {option && option.cautions.length > 0 && ` For this work: ${option.cautions.map((c) => say(c)).join(' ')}`}
      </Point>
      <Point no={15} name="Whom to ring">
        {coop}: ______________________. This is a range, not a promise.
      </Point>
    </>
  );
}
