/** Metrics of a standard font, to be registered. */
declare module "pdfkit/standard-fonts/*" {
  const metrics: { name: string };
  export default metrics;
}
