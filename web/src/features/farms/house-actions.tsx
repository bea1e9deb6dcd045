import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { useNavigate } from 'react-router';
import { Field } from '../../components/forms/field.tsx';
import { useUnsaved } from '../../components/forms/unsaved.tsx';
import { ask, requestId } from '../../lib/graphql/client.ts';
import { graphql } from '../../lib/graphql/generated/index.ts';
import { DeleteItem } from './delete-item.tsx';

const Copy = graphql(`
  mutation CopyHouse($id: ID!, $name: String!, $requestId: ID!) {
    copyHouse(houseId: $id, name: $name, requestId: $requestId) {
      houseId
      faults {
        field
        message
        remedy
      }
    }
  }
`);

/** Copies a house under another name, or deletes it. */
export function HouseActions({ house }: { house: { id: string; revision: number; name: string } }) {
  const navigate = useNavigate();
  const queries = useQueryClient();
  const [name, setName] = useState<string | null>(null);
  const kept = useUnsaved(name !== null && name !== `${house.name} copy`);
  const copy = useMutation({
    mutationFn: () => ask(Copy, { id: house.id, name: name ?? '', requestId: requestId() }),
    onSuccess: async (d) => {
      if (d.copyHouse.houseId) {
        kept();
        await queries.invalidateQueries();
        setName(null);
        await navigate(`/houses/${d.copyHouse.houseId}`);
      }
    },
  });
  return (
    <>
      {name === null ? (
        <button className="link" onClick={() => setName(`${house.name} copy`)}>
          copy the house
        </button>
      ) : (
        <form
          onSubmit={(e) => {
            e.preventDefault();
            copy.mutate();
          }}
        >
          <Field label="name of the copy" value={name} change={setName} name="name" faults={copy.data?.copyHouse.faults ?? []} />
          <button className="filled" type="submit" disabled={copy.isPending}>
            Copy it
          </button>{' '}
          <button className="link" type="button" onClick={() => setName(null)}>
            do not copy
          </button>
        </form>
      )}
      <DeleteItem
        id={house.id}
        revision={house.revision}
        name={house.name}
        done={(changeId) => void navigate('/farms', { state: { said: `${house.name} is deleted.`, changeId } })}
      />
    </>
  );
}
