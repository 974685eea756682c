#!/bin/sh
# SPDX-License-Identifier: GPL-3.0-or-later
# One part of a spread a task of a Slurm job array; the parts gathered are the run bit for bit.
#   sbatch --array=1-16 resources/spread/array.sh DESIGN UNITS SEED FOLDER
#   coilwright gather FOLDER/part-*.json >spread.json        when all tasks are done
# The array must run from 1 to the number of parts. A part that failed is run again alone:
#   sbatch --array=7 --export=ALL,PARTS=16 resources/spread/array.sh DESIGN UNITS SEED FOLDER
#SBATCH --job-name=spread
#SBATCH --ntasks=1
#SBATCH --cpus-per-task=2
#SBATCH --mem=1G
set -eu

[ $# -eq 4 ] || { echo "array: DESIGN UNITS SEED FOLDER" >&2; exit 2; }
part=${SLURM_ARRAY_TASK_ID:?"array: run it with sbatch --array=1-M"}
parts=${PARTS:-${SLURM_ARRAY_TASK_MAX:?"array: run it with sbatch --array=1-M"}}
[ -n "${PARTS:-}" ] || [ "${SLURM_ARRAY_TASK_MIN:-1}" -eq 1 ] || { echo "array: begin with part 1, or set PARTS" >&2; exit 2; }
mkdir -p "$4"
exec "${COILWRIGHT:-coilwright}" spread "$1" --units "$2" --seed "$3" --part "$part/$parts" --to "$4/part-$part.json"
