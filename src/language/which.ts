// Which of two `whichever is …` takes, by its word.

export const WHICH: ReadonlyMap<string, 'greater' | 'less'> = new Map(
  Object.entries({
    greater: 'greater',
    larger: 'greater',
    bigger: 'greater',
    more: 'greater',
    higher: 'greater',
    longer: 'greater',
    less: 'less',
    cheaper: 'less',
    shorter: 'less',
    lesser: 'less',
    smaller: 'less',
    lower: 'less',
  }),
);
