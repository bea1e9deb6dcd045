interface Props {
  /** First line. */
  over: string;
  /** Second line, often the unit. */
  under: string;
}

/** Head of a column of figures, in two lines. */
export function NumberHead({ over, under }: Props) {
  return (
    <th scope="col" className="n">
      {over}
      <br />
      {under}
    </th>
  );
}
