#version 330 core
// Solids only hide what lies behind them.
out uvec4 seen;
void main() { seen = uvec4(0u); }
