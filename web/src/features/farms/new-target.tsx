import { useQuery } from '@tanstack/react-query';
import { useEffect, useState } from 'react';
import { ask } from '../../lib/graphql/client.ts';
import type { Fuel } from '../../lib/units/format.ts';
import { ContractForm } from './contract-form.tsx';
import { Farm, Supply } from './farm-queries.ts';
import { SupplyForm } from './supply-form.tsx';

interface Props {
  farmId: string;
  fuel: Fuel;
  /** Tanks and meters that were there before. */
  known: readonly string[];
  /** Ends it, with the new tank or meter where there is one. */
  done: (id?: string) => void;
}

/** A tank or meter for a switch of fuel: first itself, then how it pays. Left without a contract it pays the monthly index. */
export function NewTarget({ farmId, fuel, known, done }: Props) {
  const [before] = useState(known);
  const [asked, setAsked] = useState(false);
  const farm = useQuery({ queryKey: ['new-target', farmId], queryFn: () => ask(Farm, { id: farmId }), enabled: asked });
  const made = asked ? farm.data?.farm?.supplyGroups.find((g) => g.fuel === fuel && !before.includes(g.id))?.id : undefined;
  const supply = useQuery({
    queryKey: ['supply', made ?? ''],
    queryFn: () => ask(Supply, { id: made ?? '' }),
    enabled: made !== undefined,
  });
  const none = asked && farm.isSuccess && !farm.isFetching && made === undefined;
  useEffect(() => {
    // it was left as it was, or saved with another fuel: the list decides
    if (none) done();
  }, [none, done]);
  if (!asked) {
    return (
      <SupplyForm
        farmId={farmId}
        supply={{
          name: '',
          kind: fuel === 'PROPANE' || fuel === 'FUEL_OIL' || fuel === 'WOOD_PELLETS' ? 'TANK' : 'METER',
          fuel,
          otherUses: [],
        }}
        close={() => setAsked(true)}
      />
    );
  }
  const error = farm.error ?? supply.error;
  if (error) return <p className="fault">{error.message}</p>;
  if (!supply.data?.supplyGroup) return <p className="quiet">Reading the new tank or meter.</p>;
  return <ContractForm supply={supply.data.supplyGroup} offered={false} close={() => done(made)} />;
}
