/** Budgets draw their trials from here: the same digits on every machine and in every form. */
export const seed = 1;
