import { ask } from '../../lib/graphql/client.ts';
import { graphql } from '../../lib/graphql/generated/index.ts';

const Templates = graphql(`
  query SheetTemplates {
    houseSheetTemplate
    quoteSheetTemplate
  }
`);

async function download(kind: 'farms' | 'quotes') {
  const { houseSheetTemplate, quoteSheetTemplate } = await ask(Templates);
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([kind === 'farms' ? houseSheetTemplate : quoteSheetTemplate], { type: 'text/csv' }));
  link.download = kind === 'farms' ? 'farms-and-houses.csv' : 'quotes.csv';
  link.click();
  URL.revokeObjectURL(link.href);
}

/** What a sheet of farms or of quotes has to say, and an empty one to fill in. */
export function SheetToFill({ kind }: { kind: 'farms' | 'quotes' }) {
  return (
    <p>
      {kind === 'farms' ? (
        <>
          Head names are plain words in any order; only farm, house, width, length and fuel have to be there. A column{' '}
          <i>used last winter (gal)</i>, with therm, MMBtu, kWh or ton instead of gal where the fuel is sold so, ties houses to what they
          burned; a column <i>unit used</i> tells the unit row by row, <i>winter used</i> (such as 2024-25) another winter than the last.
          Houses on one tank or meter are added up, so its whole use may stand on one of them. Tickets and bills go in on the page of each
          tank or meter, once the houses are here.{' '}
        </>
      ) : (
        <>
          Head names are plain words in any order. Farm, house, retrofit, date and kind have to be there, and money in dollars: material (or
          quantity and unit price), labour, freight, electrical, permits, removal, once per visit. Rows of one farm, supplier and date are
          one quote; <i>kind</i> is firm, budget or catalogue, and the spread of the outlay goes by it. <i>Eligible</i> says no where a
          grant may not count a row. Each house has a row of its own, with its share of a charge that comes once a visit.{' '}
        </>
      )}
      <button className="link" onClick={() => void download(kind)}>
        Take an empty sheet to fill in
      </button>
      .
    </p>
  );
}
