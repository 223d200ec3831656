declare module "jstat" {
  export const jStat: {
    normal: {
      cdf(x: number, mean: number, sd: number): number;
      inv(share: number, mean: number, sd: number): number;
    };
  };
}
