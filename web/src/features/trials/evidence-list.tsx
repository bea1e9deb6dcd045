import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { LedgerTable } from '../../components/ledger-table.tsx';
import { ask, requestId } from '../../lib/graphql/client.ts';
import { graphql } from '../../lib/graphql/generated/index.ts';
import type { Evidence, Factor } from './trials-query.ts';
import { SavingMark } from './saving-mark.tsx';
import { useUnits } from '../../lib/units/units-context.tsx';

const Count = graphql(`
  mutation CountEvidence($id: ID!, $expectedRevision: Int!, $counted: Boolean!, $reason: String, $requestId: ID!) {
    countEvidence(id: $id, expectedRevision: $expectedRevision, counted: $counted, reason: $reason, requestId: $requestId) {
      conflict
      faults {
        message
        remedy
      }
    }
  }
`);

const kinds = { TRIAL: 'trial', AWARD: 'award followed to its bills', PUBLISHED: 'published', JUDGED: 'judged' } as const;

export function FactorTable({ factors }: { factors: readonly Factor[] }) {
  const { say } = useUnits();
  return (
    <LedgerTable name="realised factors by retrofit">
      <thead>
        <tr>
          <th scope="col">retrofit</th>
          <th scope="col">true saving over modelled, studies take; 0 to 1.6, nine in ten houses</th>
          <th scope="col" className="n">
            before
          </th>
          <th scope="col" className="n">
            sites
          </th>
          <th scope="col" className="n">
            now
          </th>
        </tr>
      </thead>
      <tbody>
        {factors.map((f) => (
          <tr key={f.retrofitCode}>
            <td>
              <b>{say(f.retrofitTitle)}</b>
              {f.sites > 0 && <span className="second">{f.words}</span>}
            </td>
            <td className="mark">
              <SavingMark value={f.mean} low={f.mean - 1.645 * f.sd} high={f.mean + 1.645 * f.sd} most={1.6} />
            </td>
            <td className="n">
              {f.priorMean.toFixed(2)} ± {f.priorSd.toFixed(2)}
            </td>
            <td className="n">{f.sites}</td>
            <td className="n">
              <b>{f.mean.toFixed(2)}</b> ± {f.sd.toFixed(2)}
            </td>
          </tr>
        ))}
      </tbody>
    </LedgerTable>
  );
}

export function EvidenceTable({ evidence }: { evidence: readonly Evidence[] }) {
  return (
    <LedgerTable name="evidence">
      <thead>
        <tr>
          <th scope="col">retrofit</th>
          <th scope="col">where it comes from</th>
          <th scope="col" className="n">
            factor
          </th>
          <th scope="col">counts</th>
        </tr>
      </thead>
      <tbody>
        {evidence.map((e) => (
          <EvidenceRow key={e.id} e={e} />
        ))}
      </tbody>
    </LedgerTable>
  );
}

function EvidenceRow({ e }: { e: Evidence }) {
  const { say } = useUnits();
  const queries = useQueryClient();
  const [reason, setReason] = useState('');
  const [asking, setAsking] = useState(false);
  const run = useMutation({
    mutationFn: (counted: boolean) => ask(Count, { id: e.id, expectedRevision: e.revision, counted, reason, requestId: requestId() }),
    onSuccess: (d) => {
      if (d.countEvidence.faults.length === 0 && !d.countEvidence.conflict) {
        setAsking(false);
        void queries.invalidateQueries();
      }
    },
  });
  const answer = run.data?.countEvidence;
  return (
    <tr>
      <td>{say(e.retrofitTitle)}</td>
      <td>
        {kinds[e.kind]}: {e.source}
        {(e.note ?? e.setAsideReason) && (
          <span className="second">{[e.note, e.counted ? null : `set aside: ${e.setAsideReason ?? ''}`].filter(Boolean).join('; ')}</span>
        )}
      </td>
      <td className="n">
        {e.factorMean.toFixed(2)} ± {e.factorSd.toFixed(2)}
      </td>
      <td className="small">
        {e.counted ? 'yes' : 'no'}{' '}
        {asking ? (
          <span>
            <input aria-label="reason" placeholder="why it does not count" value={reason} onChange={(x) => setReason(x.target.value)} />{' '}
            <button className="link" disabled={run.isPending} onClick={() => run.mutate(false)}>
              set aside
            </button>
          </span>
        ) : (
          <button className="link" disabled={run.isPending} onClick={() => (e.counted ? setAsking(true) : run.mutate(true))}>
            {e.counted ? 'set aside' : 'let it count'}
          </button>
        )}
        {answer?.conflict && <span className="fault"> Somebody changed it meanwhile; reload the page.</span>}
        {answer?.faults.map((f) => (
          <span key={f.message} className="fault">
            {' '}
            {f.message} {f.remedy}
          </span>
        ))}
      </td>
    </tr>
  );
}
