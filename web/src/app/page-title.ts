/** Names of the pages by the first part of the address; the chief pages bear the names of the links above. */
const names: Record<string, string> = {
  '': 'Overview',
  farms: 'Farms',
  houses: 'Houses',
  supplies: 'Tank or meter',
  'co-ops': 'Co-ops',
  options: 'Option',
  funding: 'Funding',
  loans: 'Loans',
  rounds: 'Rounds',
  awards: 'Awards',
  fuel: 'Fuel',
  winters: 'Winters',
  evidence: 'Evidence',
  assumptions: 'Assumptions',
  studies: 'Studies',
  import: 'Import',
};

/** Title of the document: page, then program. */
export function titleOf(pathname: string): string {
  const [first = '', second = ''] = pathname.split('/').slice(1);
  const page =
    first === 'houses' && second !== ''
      ? second === 'new'
        ? 'New house'
        : 'House'
      : first === 'farms' && second !== ''
        ? 'Farm'
        : first === 'loans' && second !== ''
          ? second === 'book'
            ? 'Loan book'
            : 'Loan case'
          : first === 'rounds' && second !== ''
            ? 'Round'
            : first === 'awards' && second !== ''
              ? 'Award'
              : first === 'fuel' && second === 'prices'
                ? 'Fuel prices'
                : names[first];
  return `${page ?? 'No such page'} - FarmPortfolio`;
}
