import { spawn } from "node:child_process";

/*
 * What two processors of this machine give to two programs that share nothing: on virtual machines often less than twice
 * what one gives, because both may be threads of one core. No pool of workers can come further than that.
 */

/** Work on a table that stays in the processor's own cache: no memory, no files, no rubbish collected. A second or two. */
const BUSY = "const table=new Float64Array(4096);let sum=0;for(let k=0;k<4e8;k+=1){const at=(k*7919)&4095;table[at]+=k&7;sum+=table[(at*31)&4095]}if(sum<0)throw sum";

/** @returns seconds until so many busy programs of one kind, begun together, have all ended. */
export async function busySeconds(programs: number): Promise<number> {
  const start = process.hrtime.bigint();
  await Promise.all(Array.from({ length: programs }, () => new Promise<void>((resolve, reject) => {
    spawn(process.execPath, ["-e", BUSY], { stdio: "inherit" }).on("error", reject).on("exit", (code) => (code === 0 ? resolve() : reject(new Error(`a busy program ended with ${code}`))));
  })));
  return Number(process.hrtime.bigint() - start) / 1e9;
}
