// SPDX-License-Identifier: MIT
// The yardstick of a cold start: the libraries are loaded, nothing else happens.
int main() {}
