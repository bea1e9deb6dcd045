import { useQuery } from '@tanstack/react-query';
import { ask } from '../../lib/graphql/client.ts';
import { useUnits } from '../../lib/units/units-context.tsx';
import { EvidenceForm } from './evidence-form.tsx';
import { EvidenceTable, FactorTable } from './evidence-list.tsx';
import { TrialImport } from './trial-import.tsx';
import { TrialSection } from './trial-section.tsx';
import { EvidencePageDocument, inWords, percent, range } from './trials-query.ts';
import { counted } from '../../lib/units/format.ts';

export function EvidencePage() {
  const { units, say } = useUnits();
  const { data, error } = useQuery({ queryKey: ['evidence'], queryFn: () => ask(EvidencePageDocument) });
  if (error) return <p className="fault">{error.message}</p>;
  if (!data) return <p className="quiet">Working the trials out.</p>;
  const coop = data.coop;
  const answers = coop.trials[0]?.comparisons ?? [];
  const [first, second] = answers;
  const updated = coop.realisedFactors.filter((f) => f.sites > 0);
  return (
    <>
      {first ? (
        <h1>
          A winter side by side puts {inWords(first.retrofitTitle)} at <b>{percent(first.saving.value)}</b> of the heat (
          {range(first.saving)})
          {second && (
            <>
              {' '}
              and {inWords(second.retrofitTitle)} at <b>{percent(second.saving.value)}</b> ({range(second.saving)})
            </>
          )}
          .
        </h1>
      ) : (
        <h1>No trial has spoken yet; every saving goes by the catalogue's judgement.</h1>
      )}
      <p className="lead">
        A trial is houses run side by side, one left as it stands. What carries over to another house is the factor, measured over modelled,
        with the spread between sites; studies take it from here.
      </p>
      {coop.trials.map((t) => (
        <TrialSection key={t.id} trial={t} units={units} />
      ))}
      <section>
        <h2>What studies take for a retrofit's saving</h2>
        <p className="caption">
          Before: the catalogue. Now: with the sites that count. Below three sites the spread between sites is taken as 0.15, so that one
          splendid trial makes no certain forecast.{' '}
          {coop.newestStudy &&
            (coop.newestStudy.evidenceUsed.length > 0
              ? `Study ${String(coop.newestStudy.number)} took trials for ${String(coop.newestStudy.evidenceUsed.length)} retrofits.`
              : `Study ${String(coop.newestStudy.number)} took the catalogue's figures alone.`)}
        </p>
        <FactorTable
          factors={updated.length > 0 ? [...updated, ...coop.realisedFactors.filter((f) => f.sites === 0)] : coop.realisedFactors}
        />
      </section>
      <section>
        <h2>Evidence, by retrofit</h2>
        <p className="caption">What the catalogue's own figure already rests on is listed, but set aside: it must not count twice.</p>
        <EvidenceTable evidence={coop.evidence} />
      </section>
      <EvidenceForm coop={coop} />
      <section>
        <h2>Planning a trial</h2>
        <p>
          For an answer within plus or minus {coop.trialWeeks.halfWidthPoints} points, careful daily readings of two houses take about{' '}
          <b>{counted(coop.trialWeeks.weeksInUse ?? 0, 'week')}</b> in use and {counted(coop.trialWeeks.weeksIdle ?? 0, 'week')} with the
          retrofit idle in both, in blocks of a few nights over {say('15 F of outside range')}. Without idle nights no length is enough: two
          houses are never alike.
        </p>
        <p className="small quiet">
          Read both houses at the same hour; note inside and outside temperature and the state of the retrofit; write broken and forgotten
          nights down, they stay in. Clock the meter once where burner hours are read.
        </p>
      </section>
      <TrialImport coop={coop} />
    </>
  );
}
