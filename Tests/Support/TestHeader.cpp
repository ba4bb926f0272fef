// SPDX-License-Identifier: GPL-3.0-or-later
// Holds no code: the target of this file precompiles GoogleTest's header for all the others.
