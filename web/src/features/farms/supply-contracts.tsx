import { useState } from 'react';
import { Link } from 'react-router';
import { unitIn } from '../../lib/units/format.ts';
import { useUnits } from '../../lib/units/units-context.tsx';
import { ContractForm } from './contract-form.tsx';
import { contractWords, type Contract, type Supply } from './contract-words.ts';
import { DeleteItem } from './delete-item.tsx';
import { UndoNotice } from '../../components/undo-notice.tsx';

/** Contracts in force and offers of a tank or meter. */
export function SupplyContracts({ supply }: { supply: Supply }) {
  const [open, setOpen] = useState<string | null>(null);
  const [notice, setNotice] = useState<{ said: string; changeId: string } | null>(null);
  const form = (offered: boolean, contract?: Contract) => (
    <ContractForm supply={supply} contract={contract} offered={offered} close={() => setOpen(null)} />
  );
  const list = (standing: Contract['standing']) =>
    supply.contracts
      .filter((c) => c.standing === standing)
      .map((c) =>
        open === c.id ? (
          <div key={c.id}>{form(standing === 'OFFERED', c)}</div>
        ) : (
          <div key={c.id} className="acts">
            <span>
              <b>{c.name}</b>: {contractWords(c)}.
            </span>
            <button className="link" onClick={() => setOpen(c.id)}>
              change<span className="hidden"> {c.name}</span>
            </button>
            <DeleteItem
              id={c.id}
              revision={c.revision}
              name={c.name ?? 'contract'}
              done={(changeId) => setNotice({ said: `${c.name ?? 'The contract'} is deleted.`, changeId })}
            />
          </div>
        ),
      );
  const { units } = useUnits();
  const paper = supply.contracts[0]?.unit;
  const inForce = supply.contracts.filter((c) => c.standing === 'IN_FORCE');
  const taken = inForce.reduce((sum, c) => sum + (c.volumeShare ?? 1), 0);
  return (
    <section>
      <h2>How it pays</h2>
      {notice && <UndoNotice {...notice} close={() => setNotice(null)} />}
      {paper && unitIn(paper, units) !== paper && (
        <p className="caption">
          Contracts, offers and tickets stand in the unit of their papers, {paper}: they are settled to the cent in it.
        </p>
      )}
      {inForce.length === 0 && <p>On the monthly index, delivered.</p>}
      {list('IN_FORCE')}
      {open === 'new' ? (
        form(false)
      ) : taken < 0.999 ? (
        <button className="link" onClick={() => setOpen('new')}>
          {inForce.length > 0 ? 'a contract for the rest of the volume' : 'enter a contract'}
        </button>
      ) : null}
      <h2>Offers</h2>
      <p className="caption">
        What was offered and not signed: compared with what you have on the <Link to={`/fuel?farm=${supply.farm.id}`}>fuel page</Link>,
        never used in a study.
      </p>
      {list('OFFERED')}
      {open === 'offer' ? (
        form(true)
      ) : (
        <button className="link" onClick={() => setOpen('offer')}>
          add an offer
        </button>
      )}
    </section>
  );
}
