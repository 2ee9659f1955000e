let tell = () => {};

/** Comes when the page's first answer stands, or somebody moves down the page: then what lies further down is fetched too. */
export const firstAnswer = new Promise<void>((resolve) => {
  tell = resolve;
});

/** Says that nothing that the first answer needs is still to be fetched. */
export const tellFirstAnswer = (): void => tell();
