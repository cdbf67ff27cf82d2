#version 330 core
// Which piece of path is seen here.
flat in int v_piece;
out uvec4 seen;
void main() { seen = uvec4(2u, uint(v_piece), 0u, 0u); }
